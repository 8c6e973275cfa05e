import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import {
  FEWEST_SEGMENTS,
  SAME_FLOOR,
  SAME_MOUNT,
  type ComparedSide,
  type GuardSettings,
} from './compared-side.js';
import type { ComparisonCode, ComparisonStatement } from './compare-types.js';
import { levelSwing } from './level-swing.js';
import { mountTurn } from './mount-turn.js';
import { rpmText } from './rpm-text.js';
import { speedDrift } from './speed-drift.js';

type Sides = readonly [ComparedSide, ComparedSide];

interface Conditions extends GuardSettings {
  readonly short: boolean;
  readonly speedsDiffer: boolean;
}

/** Middle four fifths of the levels of the segments may spread this far, dB. Common practice. */
const STEADY = 3;
/** Share by which the speed may wander within a recording. */
const STEADY_SPEED = 0.01;

/** What the two recordings must be taken with, hardest first. */
export function conditionStatements(sides: Sides, conditions: Conditions): ComparisonStatement[] {
  return [
    ...tooShort(sides, conditions),
    ...speeds(sides, conditions),
    ...clipped(sides),
    ...mount(sides, conditions),
    ...folded(sides),
    ...levels(sides),
    ...ifTrue(sides[0].recording.sampling.kind === 'sound', 'gain-unknown', GAIN),
    statement(
      'one-run-each',
      `The intervals hold the scatter within each recording and ${numberText(100 * conditions.repeatability, 2)} % between runs alike, which is assumed: make one of the runs twice to learn it.`,
    ),
  ];
}

const GAIN =
  'Sound has no scale: a change counts only with the same phone, place and gain, and with the phone’s own levelling switched off.';

function statement(code: ComparisonCode, sentence: string): ComparisonStatement {
  return { code, sentence };
}

function ifTrue(holds: boolean, code: ComparisonCode, sentence: string): ComparisonStatement[] {
  return holds ? [statement(code, sentence)] : [];
}

/** 'before', 'after', or both, of the sides for which something holds. */
function which(sides: Sides, holds: (side: ComparedSide) => boolean): string {
  return listText(['before', 'after'].filter((_, i) => holds(sides[i] ?? sides[0])));
}

function tooShort(sides: Sides, { short }: Conditions): ComparisonStatement[] {
  const poor = ({ plan }: ComparedSide): boolean => plan.starts.length < FEWEST_SEGMENTS;
  const seconds = Math.max(
    ...sides.map(({ plan, recording }) => ((FEWEST_SEGMENTS + 1) * plan.length) / 2 / recording.sampleRate),
  );
  return ifTrue(
    short,
    'too-short',
    `Too short (${which(sides, poor)}): at this speed ${numberText(seconds, 2)} s without a gap are the least from which the scatter can be judged, and three times that is good.`,
  );
}

function speeds(sides: Sides, { speedsDiffer, tolerance }: Conditions): ComparisonStatement[] {
  const [before, after] = sides;
  const unseen = ({ measured }: ComparedSide): boolean => measured.speedFrom === 'given';
  const drifts = (side: ComparedSide): boolean => speedDrift(side) > STEADY_SPEED;
  return [
    ...ifTrue(
      speedsDiffer,
      'speed-differs',
      `It turned at ${rpmText(before.measured.speed)} before and at ${rpmText(after.measured.speed)} after; beyond ${numberText(100 * tolerance, 2)} % the speed itself changes every order. Repeat one run at the other’s speed.`,
    ),
    ...ifTrue(
      sides.some(unseen),
      'speed-not-seen',
      `No order stands above the noise (${which(sides, unseen)}): the speed is taken as told.`,
    ),
    ...ifTrue(
      sides.some(drifts),
      'speed-drifts',
      `The speed wanders by more than ${numberText(100 * STEADY_SPEED, 1)} % within a recording (${which(sides, drifts)}): its higher orders read low.`,
    ),
  ];
}

function clipped(sides: Sides): ComparisonStatement[] {
  const cut = ({ recording }: ComparedSide): boolean => recording.sampling.clipping.length > 0;
  return ifTrue(
    sides.some(cut),
    'clipped',
    `Samples were cut off (${which(sides, cut)}): amplitudes are too small and some higher orders are made by the cutting. Record again with the phone further off or on a stiffer place.`,
  );
}

function mount(sides: Sides, { channels, groups }: Conditions): ComparisonStatement[] {
  const [{ recording: before }, { recording: after }] = sides;
  const turn = mountTurn(before, after);
  const rest =
    channels === 'together'
      ? 'The axes are read together, so the turn itself does no harm; a different place would.'
      : 'Figures of one axis cannot be compared; read the axes together.';
  const compared = groups.flatMap(({ names }) => names);
  const left = [...before.channels, ...after.channels].filter(({ name }) => !compared.includes(name));
  return [
    ...ifTrue(
      turn > SAME_MOUNT,
      'mount-turned',
      `The phone lay differently: gravity points ${numberText((turn * 180) / Math.PI, 2)}° away from where it did. ${rest}`,
    ),
    ...ifTrue(
      left.length > 0,
      'channels-differ',
      `Only in one of the two, and left out: ${listText([...new Set(left.map(({ name }) => name))])}.`,
    ),
  ];
}

function folded(sides: Sides): ComparisonStatement[] {
  const beyond = sides.flatMap(({ measured }) =>
    measured.orders.filter((one) => one.folded).map(({ order }) => order),
  );
  const orders = [...new Set(beyond)].sort((a, b) => a - b);
  const [before, after] = sides.map(({ recording }) => recording.sampleRate) as [number, number];
  return [
    ...ifTrue(
      orders.length > 0,
      'folded',
      `Beyond half the sampling rate in one or both, and so not judged: order ${listText(orders)}.`,
    ),
    ...ifTrue(
      Math.abs(Math.log(after / before)) > 0.05,
      'rate-differs',
      `The sampling rates differ (${numberText(before)} and ${numberText(after)} Hz): what lies before the slower one’s half may have been weakened in it.`,
    ),
  ];
}

function levels(sides: Sides): ComparisonStatement[] {
  const swings = (side: ComparedSide): boolean => levelSwing(side) > STEADY;
  const sound = sides.some(({ recording }) => recording.sampling.kind === 'sound');
  const cause = sound
    ? 'the phone may be levelling it by itself, or the run was not steady'
    : 'the run was not steady';
  const floor = floorChange(sides);
  return [
    ...ifTrue(
      sides.some(swings),
      'level-swings',
      `The level swings by ${numberText(Math.max(...sides.map(levelSwing)), 2)} dB within a recording (${which(sides, swings)}): ${cause}.`,
    ),
    ...ifTrue(
      floor > SAME_FLOOR || floor < 1 / SAME_FLOOR,
      'floor-changed',
      `The noise between the orders changed to ${numberText(100 * floor, 2)} % as well: gain, place or surroundings differ, and an order that changed by as much says nothing.`,
    ),
  ];
}

/** Middle change of the noise beside the orders, amplitude over amplitude at one bandwidth. */
function floorChange([before, after]: Sides): number {
  const ratios = before.measured.orders.flatMap(({ order, channels }) => {
    const others = after.measured.orders.find((one) => one.order === order)?.channels ?? [];
    return channels.flatMap(({ channel, floor }) => {
      const other = others.find((one) => one.channel === channel)?.floor ?? 0;
      if (!(floor > 0 && other > 0)) return [];
      return [(other / floor) * Math.sqrt(before.measured.resolution / after.measured.resolution)];
    });
  });
  return ratios.sort((a, b) => a - b)[Math.floor(ratios.length / 2)] ?? 1;
}
