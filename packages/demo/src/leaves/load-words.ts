import {
  lineTwist,
  type Assessment,
  type BushLoad,
  type JointLoad,
  type LineLoads,
  type ShaftLine,
} from '@sternline/core';
import type { TableData } from '../elements/data-table.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';

/** What is weakest at the wanted speed, in a sentence; or what to enter. */
export function loadsSentence({ loads, speed }: Assessment, line: ShaftLine, units: Units): string {
  if (!loads)
    return 'Enter the propeller, its blades, diameter and pitch, to know the torque and what it asks of shaft, screws and bushes.';
  const weakest = loads.shafts.reduce(
    (least, shaft) => (factorOf(shaft.safety) < factorOf(least.safety) ? shaft : least),
    loads.shafts[0] ?? NO_SHAFT,
  );
  const opening = `At ${formatFigure(speed, 'speed', units)} the propeller asks for ${formatFigure(loads.torque, 'torque', units)}.`;
  const factor = factorOf(weakest.safety);
  const name = line.shafts[weakest.shaft]?.name ?? 'shaft';
  const strength = Number.isFinite(factor)
    ? `The ${name} is the weakest, at ${factor >= 10 ? Math.round(factor) : factor.toFixed(1)} times the strength that it needs`
    : 'The shafts carry next to nothing';
  return `${opening} ${strength}; over its length the line winds up by ${formatFigure(Math.abs(lineTwist(line, { torque: loads.torque }).total), 'angle', units)}. ${screwSentence(loads, units)} ${bushSentence(loads)}`;
}

interface Factors {
  readonly fatigueFactor: number;
  readonly yieldFactor: number;
}

const NO_SHAFT = { shaft: 0, safety: { fatigueFactor: Infinity, yieldFactor: Infinity } };

function factorOf({ fatigueFactor, yieldFactor }: Factors): number {
  return Math.min(fatigueFactor, yieldFactor);
}

function screwSentence({ joints }: LineLoads, units: Units): string {
  const checked = joints.filter(({ fastener }) => fastener !== undefined);
  if (checked.length === 0)
    return 'Enter how the joints are held, at the joint among the parts, to know whether their screws stay.';
  const loose = checked.find(({ fastener }) => fastener?.holds === false);
  if (!loose?.fastener) return 'The set screws hold.';
  return `The set screw of joint ${loose.joint + 1} will walk loose${offerWords(loose, units)}.`;
}

function offerWords({ fastener }: JointLoad, units: Units): string {
  const offer = fastener?.offer;
  if (!offer) return ': no set screw in stock would hold; clamp or pin the joint';
  const screws = offer.count === 1 ? 'one screw' : `${offer.count} screws`;
  const size = `M${Number((offer.size * 1000).toFixed(1))}`;
  return `: ${screws} ${size}${offer.flat ? ' on a flat' : ''}${offer.threadLock ? ', with thread lock' : ''}, seated with ${formatFigure(offer.seatingTorque, 'torque', units)}, would hold`;
}

function bushSentence({ supports }: LineLoads): string {
  const plain = supports.filter(({ bush }) => bush.verdict !== 'rolling');
  if (plain.some(({ bush }) => bush.verdict === 'beyond'))
    return 'A bush works beyond what its lining bears.';
  if (plain.some(({ bush }) => bush.verdict === 'unknown'))
    return 'Enter length and lining of every bush to know what it bears.';
  return 'The bushes work within what their linings bear.';
}

/** Torque, stress and safety of every shaft. */
export function shaftTable({ loads }: Assessment, line: ShaftLine, units: Units): TableData {
  const twist = loads ? lineTwist(line, { torque: loads.torque }).shafts : [];
  return {
    caption: 'Shafts, at the peak of all loads together',
    columns: [
      'Shaft',
      'Torque',
      'Swing about it',
      'Winds up',
      'Shear',
      'Bending',
      'Von Mises',
      'To yield',
      'To fatigue',
    ],
    rows: (loads?.shafts ?? []).map(({ shaft, torque, torqueSwing, stress, safety }) => [
      line.shafts[shaft]?.name ?? `shaft ${shaft + 1}`,
      formatFigure(torque, 'torque', units),
      `± ${formatFigure(torqueSwing, 'torque', units)}`,
      formatFigure(Math.abs(twist[shaft]?.angle ?? 0), 'angle', units),
      formatFigure(stress.shear, 'stress', units),
      formatFigure(stress.bending, 'stress', units),
      formatFigure(stress.vonMises, 'stress', units),
      times(safety.yieldFactor),
      times(safety.fatigueFactor),
    ]),
  };
}

/** What every joint carries and whether its screws stay. */
export function jointLoadTable({ loads }: Assessment, units: Units): TableData {
  return {
    caption: 'Joints',
    columns: [
      'Joint',
      'Peak torque',
      'Of its rated torque',
      'Angle of its largest',
      'Side couple, twice a turn',
      'Screws hold',
    ],
    rows: (loads?.joints ?? []).map((joint) => [
      `joint ${joint.joint + 1}`,
      formatFigure(joint.peakTorque, 'torque', units),
      joint.rated ? formatFigure(1 / joint.rated.factor, 'share', units) : 'not entered',
      joint.bend ? formatFigure(1 / joint.bend.factor, 'share', units) : 'not entered',
      `± ${formatFigure(joint.couple.driving.second, 'torque', units)}`,
      screwCell(joint, units),
    ]),
  };
}

function screwCell({ fastener }: JointLoad, units: Units): string {
  if (!fastener) return 'not entered';
  const held = `${formatFigure(fastener.holding.torque, 'torque', units)}, ${fastener.factor.toFixed(1)} times; ${fastener.required} wanted`;
  return fastener.holds ? held : `✕ ${held}`;
}

/** Force, rubbing speed and pressure of every bush. */
export function bushTable({ loads }: Assessment, names: readonly string[], units: Units): TableData {
  return {
    caption: 'Bearings and bushes, against the limits of their linings',
    columns: [
      'Support',
      'Weight',
      'Once a turn',
      'Twice a turn',
      'Most',
      'Rubs at',
      'Pressure',
      'Pressure × speed',
      'Share of its limit',
    ],
    rows: (loads?.supports ?? []).map(({ weight, first, second, largest, bush }, index) => [
      names[index] ?? `support ${index + 1}`,
      ...[weight, first, second, largest].map((force) => formatFigure(force, 'force', units)),
      formatFigure(bush.rubbingSpeed, 'rubbing-speed', units),
      bush.pressure === undefined ? lengthWords(bush) : formatFigure(bush.pressure, 'stress', units),
      bush.pressureSpeed === undefined
        ? lengthWords(bush)
        : formatFigure(bush.pressureSpeed, 'pressure-speed', units),
      bushShare(bush, units),
    ]),
  };
}

function lengthWords({ verdict }: BushLoad): string {
  return verdict === 'rolling' ? '–' : 'no length';
}

function bushShare({ verdict, shares }: BushLoad, units: Units): string {
  if (verdict === 'rolling') return 'rolls: by its maker';
  const known = Object.values(shares);
  if (known.length === 0) return 'no lining entered';
  const worst = formatFigure(Math.max(...known), 'share', units);
  return verdict === 'beyond' ? `✕ ${worst}` : worst;
}

/** Kinds of seal against the speed of the shaft's surface. */
export function sealTable({ loads }: Assessment, units: Units): TableData {
  return {
    caption: 'Seals on the last shaft',
    columns: ['Seal', 'Bears', 'At the wanted speed'],
    rows: (loads?.seals ?? []).map(({ name, limit, within }) => [
      name,
      formatFigure(limit, 'rubbing-speed', units),
      within ? 'within' : '✕ too fast',
    ]),
  };
}

/** Times the wanted speed, beyond which only the first resonance in twist is told. */
const FAR = 3;

/** Speeds at which the line resonates in twist. */
export function torsionTable({ torsionalCriticals, speed }: Assessment, units: Units): TableData {
  const merged = new Map<string, { sources: Set<string>; critical: (typeof torsionalCriticals)[number] }>();
  for (const critical of torsionalCriticals) {
    if (critical.mode > 1 && critical.speed > FAR * speed) continue;
    const key = `${critical.order} ${critical.mode}`;
    const known = merged.get(key) ?? { sources: new Set<string>(), critical };
    known.sources.add(critical.source);
    merged.set(key, known);
  }
  return {
    caption: 'Resonances in twist',
    columns: ['Driven by', 'Shaft speed', 'Mode', 'Swings at'],
    rows: [...merged.values()].map(({ sources, critical }) => [
      `${[...sources].join(' and ')}, ${critical.order}×`,
      formatFigure(critical.speed, 'speed', units),
      String(critical.mode),
      formatFigure(critical.frequency / (2 * Math.PI), 'frequency', units),
    ]),
  };
}

/** Where the limits come from, each once. */
export function loadSources({ loads }: Assessment): string[] {
  if (!loads) return [];
  return [
    ...new Set([
      ...loads.shafts.map(({ safety }) => safety.source),
      ...loads.supports.flatMap(({ bush }) =>
        bush.lining ? [`${bush.lining.name}: ${bush.lining.source}`] : [],
      ),
      ...loads.seals.map(({ name, source }) => `${name}: ${source}`),
    ]),
  ];
}

function times(factor: number): string {
  if (!Number.isFinite(factor)) return 'no load';
  if (factor > 100) return 'over 100 times';
  return `${factor >= 10 ? Math.round(factor) : factor.toFixed(1)} times`;
}
