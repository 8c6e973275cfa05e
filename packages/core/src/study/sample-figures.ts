import type { ShaftLine } from '../line/types.js';
import { speedFluctuation } from '../motion/speed-fluctuation.js';
import { whirlSpeeds } from '../whirl/whirl-speeds.js';
import { avoidBands } from './avoid-bands.js';
import { bandReasons, firstWhirl } from './band-reasons.js';
import { DEFAULT_MARGINS, lineExcitations, type LineExcitation } from './excitations.js';
import { criticalsCovering } from './line-criticals.js';
import { speedLimit } from './speed-limit.js';
import type { AvoidBand, LineCriticalSpeed, Margins, Verdict } from './types.js';
import { verdictOf } from './reasons.js';

/** Modes whose band begins above this many times the wanted speed are left out, the lowest of each excitation aside. */
const REACH = 1.5;

/** What every sample of a study works out, settled on the line as entered. */
export interface SampleLayout {
  readonly speed: number;
  readonly excitations: readonly LineExcitation[];
  /** How many modes of each. */
  readonly counts: readonly number[];
  readonly criticalsOf: (line: ShaftLine) => SampledCritical[];
}

/** A critical speed without its shape, which a study of thousands has no room for. */
export type SampledCritical = Omit<LineCriticalSpeed, 'shape'>;

/** One sample worked out. */
export interface SampleFigures {
  readonly criticals: readonly SampledCritical[];
  readonly bands: readonly AvoidBand[];
  readonly speedLimit: number;
  readonly fluctuation: number;
  readonly verdict: Verdict;
}

/** Which critical speeds a study follows: those whose bands could matter at the wanted speed. */
export function sampleLayout(
  line: ShaftLine,
  { speed, margins }: { readonly speed: number; readonly margins: Partial<Margins> | undefined },
): SampleLayout {
  const excitations = lineExcitations(line, { ...DEFAULT_MARGINS, ...margins });
  const all = criticalsCovering(line, { excitations, cover: REACH * speed });
  const counts = excitations.map(({ excitation, margin }) => {
    const near = all.filter(
      (one) => one.excitation === excitation && one.speed * (1 - margin) <= REACH * speed,
    );
    return Math.max(1, ...near.map(({ mode }) => mode));
  });
  return { speed, excitations, counts, criticalsOf: criticalsSampler(line, { excitations, counts }) };
}

/** One line worked out. */
export function sampleFigures(line: ShaftLine, layout: SampleLayout): SampleFigures {
  const criticals = layout.criticalsOf(line);
  const bands = avoidBands(criticals, layout.excitations);
  const limit = speedLimit(bands);
  const reasons = bandReasons({ speed: layout.speed, bands, limit });
  return {
    criticals,
    bands,
    speedLimit: firstWhirl(bands)?.from ?? Infinity,
    fluctuation: speedFluctuation(line).degree,
    verdict: verdictOf(reasons),
  };
}

/** Critical speeds of lines near this one. */
function criticalsSampler(
  near: ShaftLine,
  { excitations, counts }: Pick<SampleLayout, 'excitations' | 'counts'>,
): (line: ShaftLine) => SampledCritical[] {
  const driven = excitations.flatMap(({ excitation, order, whirls }, i) =>
    whirls.map((whirl) => ({ excitation, order, whirl, count: counts[i] ?? 1 })),
  );
  const speedsOf = whirlSpeeds(near, driven);
  return (line) => {
    const speeds = speedsOf(line);
    return driven.flatMap(({ excitation, order, whirl }, i) =>
      (speeds[i] ?? []).map((speed, mode) => ({ excitation, order, whirl, mode: mode + 1, speed })),
    );
  };
}
