import type { ChannelGroup } from './channel-groups.js';
import { conditionStatements } from './condition-statements.js';
import { mountTurn } from './mount-turn.js';
import type { ComparisonStatement, Withheld } from './compare-types.js';
import {
  FEWEST_SEGMENTS,
  SAME_FLOOR,
  SAME_MOUNT,
  type ComparedSide,
  type GuardSettings,
} from './compared-side.js';

export interface GuardedRow {
  readonly order: number;
  readonly group: ChannelGroup;
  readonly seen: { readonly before: boolean; readonly after: boolean };
  readonly interval: readonly [number, number];
  /** Amplitude of the noise beside the order, after over before, at one bandwidth. */
  readonly floorRatio: number;
}

export interface Guards {
  readonly statements: readonly ComparisonStatement[];
  /** Why a row must not be judged; undefined where it may. */
  withhold(row: GuardedRow): Withheld | undefined;
}

/** What stands against comparing the two recordings, as a whole and row by row. */
export function compareGuards(sides: readonly [ComparedSide, ComparedSide], settings: GuardSettings): Guards {
  const [before, after] = sides;
  const short = sides.some(({ plan }) => plan.starts.length < FEWEST_SEGMENTS);
  const speeds =
    Math.abs(Math.log(after.measured.speed / before.measured.speed)) > settings.tolerance ||
    Math.abs(Math.log(settings.speed.after / settings.speed.before)) > 2 * settings.tolerance;
  const turned = mountTurn(before.recording, after.recording) > SAME_MOUNT;
  return {
    statements: conditionStatements(sides, { ...settings, short, speedsDiffer: speeds }),
    withhold: ({ order, group, seen, interval, floorRatio }) => {
      if (short) return 'too-short';
      if (speeds) return 'speed';
      if (turned && settings.channels === 'apart') return 'mount';
      return (
        placeOf(sides, order) ??
        (!seen.before && !seen.after ? 'not-seen' : undefined) ??
        (isClipped(sides, group) ? 'clipping' : undefined) ??
        (group.unit === 'full scale' && explains(floorRatio, interval) ? 'gain' : undefined)
      );
    },
  };
}

function placeOf(sides: readonly ComparedSide[], order: number): Withheld | undefined {
  const places = sides.map(({ recording, measured }) => {
    const place = measured.orders.find((one) => one.order === order);
    const passband = recording.sampling.passband ?? Infinity;
    return { ...place, folded: place?.folded === true || (place?.frequency ?? 0) > passband };
  });
  if (places.some(({ folded }) => folded)) return 'folded';
  if (places.some(({ reachable }) => reachable === false)) return 'hidden';
  return places.some(({ inseparableFrom = [] }) => inseparableFrom.length > 0) ? 'shared' : undefined;
}

function isClipped(sides: readonly ComparedSide[], { names }: ChannelGroup): boolean {
  return sides.some(({ recording }) =>
    recording.sampling.clipping.some(({ channel }) => names.includes(channel)),
  );
}

/** Whether the noise changed by more than runs alike do, and the order no more than the noise. */
function explains(floorRatio: number, [low, high]: readonly [number, number]): boolean {
  const changed = floorRatio > SAME_FLOOR || floorRatio < 1 / SAME_FLOOR;
  return changed && floorRatio >= low && floorRatio <= high;
}
