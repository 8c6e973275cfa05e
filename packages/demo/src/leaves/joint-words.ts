import {
  angularAcceleration,
  jointAngles,
  speedAngles,
  torqueRatios,
  type Chatter,
  type ShaftLine,
} from '@sternline/core';
import type { TableData } from '../elements/data-table.js';
import type { Units } from '../model/project.js';
import type { JointChatter } from '../model/turning.js';
import { formatFigure } from '../model/units.js';

/** What is known of the joints at one speed. */
export interface JointState {
  /** rad/s */
  readonly speed: number;
  readonly chatters: readonly JointChatter[];
  /** Joints whose torque swings by more than its mean at that speed, the twist of the line counted. */
  readonly rattling: readonly number[];
}

/** What the joints bear at the wanted speed, worst first, in a sentence. */
export function jointsSentence(
  line: ShaftLine,
  { speed, chatters, rattling }: JointState,
  units: Units,
): string {
  const worst = speedAngles(line, { speed }).reduce<
    { joint: number; share: number; product: number } | undefined
  >((most, each) => (most && most.share >= each.share ? most : each), undefined);
  if (!worst) return 'Without a universal joint nothing speeds up and slows down within a turn.';
  const limit = 'the 15 000 that plain pins are made for';
  const figure = formatFigure(worst.product, 'speed-angle', units);
  const opening =
    worst.share > 1
      ? `Joint ${worst.joint + 1} works at ${figure}, ${worst.share.toFixed(1)} times ${limit}: expect wear, or take a joint on needle rollers.`
      : `Joint ${worst.joint + 1} works at ${figure}, within ${limit}.`;
  return `${opening} ${chatterSentence(chatters, speed, units)}${rattleSentence(rattling, speed, units)}`;
}

/** The balance of torque leaves out that the line winds up; near a torsional resonance that decides. */
function rattleSentence(rattling: readonly number[], speed: number, units: Units): string {
  if (rattling.length === 0) return '';
  const names = rattling.map((joint) => `joint ${joint + 1}`).join(' and ');
  return ` With the winding of the shaft counted, though, the torque at ${names} swings by more than its mean at ${formatFigure(speed, 'speed', units)}: it rattles there.`;
}

function chatterSentence(chatters: readonly JointChatter[], speed: number, units: Units): string {
  const start = (pick: (each: JointChatter) => Chatter | undefined) =>
    Math.min(...chatters.map((each) => reachable(pick(each)?.speed ?? Infinity)));
  const dry = start(({ dry: chatter }) => chatter);
  const wet = start(({ wet: chatter }) => chatter);
  const told = chatters.some(({ wet: chatter }) => chatter !== undefined);
  const inAir = Number.isFinite(dry)
    ? `Out of the water its pins start to rattle at ${formatFigure(dry, 'speed', units)}`
    : 'Out of the water its pins do not rattle';
  if (!told) return `${inAir}; enter the propeller to know about in the water.`;
  if (!Number.isFinite(wet)) return `${inAir}; in the water the propeller keeps them pressed to one side.`;
  const meets = wet <= speed ? 'so it rattles at the wanted speed' : 'above the wanted speed';
  return `${inAir}, in the water at ${formatFigure(wet, 'speed', units)}, ${meets}.`;
}

/** Each joint at the wanted speed. */
export function jointTable(
  line: ShaftLine,
  { speed, chatters }: { speed: number; chatters: readonly JointChatter[] },
  units: Units,
): TableData {
  const angles = jointAngles(line);
  const ratios = torqueRatios(line);
  const products = speedAngles(line, { speed });
  const write = (chatter: Chatter | undefined) =>
    chatter === undefined ? 'not known' : chatterWords(chatter, units);
  return {
    caption: `Each joint at ${formatFigure(speed, 'speed', units)}`,
    columns: [
      'Joint',
      'Angle',
      'Swing it makes alone',
      'Torque behind it over before',
      'Speed × angle',
      'Of the plain-pin limit',
      'Rattles, dry',
      'Rattles, in water',
    ],
    rows: line.joints.map(({ kind }, joint) => {
      const angle = angles[joint] ?? 0;
      const ratio = ratios[joint];
      const product = products.find((each) => each.joint === joint);
      const chatter = chatters.find((each) => each.joint === joint);
      const swing = kind === 'universal' ? Math.sin(angle) * Math.tan(angle) : 0;
      return [
        `${joint + 1}, ${kind}`,
        formatFigure(angle, 'angle', units),
        formatFigure(swing, 'share', units),
        ratio ? `${ratio.least.toFixed(3)} to ${ratio.greatest.toFixed(3)}` : '',
        product ? formatFigure(product.product, 'speed-angle', units) : 'none',
        product ? formatFigure(product.share, 'share', units) : 'none',
        kind === 'universal' ? write(chatter?.dry) : 'never',
        kind === 'universal' ? write(chatter?.wet) : 'never',
      ];
    }),
  };
}

/** rad/s, a million rpm: what starts beyond it never does. */
const NEVER = 1e6 * (Math.PI / 30);

function reachable(speed: number): number {
  return speed > NEVER ? Infinity : speed;
}

function chatterWords({ chatters, speed }: Chatter, units: Units): string {
  if (!Number.isFinite(reachable(speed))) return 'never';
  if (chatters === 'above') return `above ${formatFigure(speed, 'speed', units)}`;
  return chatters === 'always' ? 'at every speed' : 'never';
}

/** How hard each shaft speeds up and slows down. */
export function accelerationTable(line: ShaftLine, speed: number, units: Units): TableData {
  const { shafts } = angularAcceleration(line, { speed });
  return {
    caption: `How hard each shaft speeds up and slows down at ${formatFigure(speed, 'speed', units)}`,
    columns: ['Shaft', 'Acts like one joint at', 'Peak acceleration', 'With the motor at'],
    rows: shafts
      .slice(1)
      .map(({ shaft, equivalentAngle, peak, inputAngle }) => [
        shaftName(line, shaft),
        formatFigure(equivalentAngle, 'angle', units),
        formatFigure(peak, 'angular-acceleration', units),
        peak > 0 ? `${formatFigure(inputAngle, 'angle', units)}, and half a turn on` : 'any angle',
      ]),
  };
}

/** The strongest acceleration behind the joints, in a sentence. */
export function accelerationSentence(line: ShaftLine, speed: number, units: Units): string {
  const { peak, inputAngle } = angularAcceleration(line, { speed });
  if (peak < 1e-6) return 'The propeller turns evenly: nothing speeds it up and slows it down within a turn.';
  return `Twice a turn the propeller is sped up at ${formatFigure(peak, 'angular-acceleration', units)} and slowed as hard; it gains fastest with the motor shaft at ${formatFigure(inputAngle, 'angle', units)}.`;
}

function shaftName(line: ShaftLine, shaft: number): string {
  const name = line.shafts[shaft]?.name ?? '';
  return name === '' ? `shaft ${shaft + 1}` : name;
}
