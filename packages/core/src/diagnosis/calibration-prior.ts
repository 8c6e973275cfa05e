import type { Shaft, ShaftLine, Support } from '../line/types.js';
import { section } from '../whirl/section.js';
import type { CalibrationParameter } from './calibration-types.js';

/**
 * Where the design gives no finite stiffness, the median in units of EI/L³ and EI/L of the shaft's longest span: a rigid
 * bush then lowers the first mode by under 1 %, a free one raises it by about 4 %, fixed ones at both ends lower it
 * by about 4 % (first order, 8 over 2 × 100; solved, 3.7 %). Our choice; derived from Rayleigh quotients of a uniform beam.
 */
const RIGID = 3000;
const FREE = 0.2;
const FIXED = 100;
const DEFAULT_SPREAD = Math.log(10);

/** One factor with what it acts on. */
export interface PriorParameter {
  readonly kind: 'radial' | 'angular';
  readonly spread: number;
  readonly supports: readonly PriorSupport[];
}

export interface PriorSupport {
  readonly shaft: number;
  readonly support: number;
  readonly designed: number;
  readonly median: number;
}

/** What each parameter acts on and where its prior stands. */
export function calibrationPrior(
  line: ShaftLine,
  parameters: readonly CalibrationParameter[] = defaultParameters(line),
): PriorParameter[] {
  return parameters.map(({ kind, supports, median, spread = DEFAULT_SPREAD }) => ({
    kind,
    spread,
    supports: supports.flatMap((place) => {
      const shaft = line.shafts[place.shaft];
      const support = shaft?.supports[place.support];
      if (shaft === undefined || support === undefined) return [];
      const designed = kind === 'radial' ? radialOf(support) : angularOf(support);
      return [{ ...place, designed, median: median ?? medianOf(shaft, kind, designed) }];
    }),
  }));
}

function defaultParameters({ shafts }: ShaftLine): CalibrationParameter[] {
  const shaft = shafts.findLastIndex(({ supports }) => supports.length > 0);
  const supports = (shafts[shaft]?.supports ?? []).map((_, support) => ({ shaft, support }));
  return [
    { kind: 'radial', supports },
    { kind: 'angular', supports },
  ];
}

function radialOf({ radialStiffness = Infinity }: Support): number {
  return radialStiffness;
}

function angularOf({ fixesSlope = false, angularStiffness = 0 }: Support): number {
  return fixesSlope ? Infinity : angularStiffness;
}

function medianOf(shaft: Shaft, kind: 'radial' | 'angular', designed: number): number {
  if (designed > 0 && designed < Infinity) return designed;
  const { bendingStiffness } = section(shaft);
  const span = longestSpan(shaft);
  if (kind === 'radial') return (RIGID * bendingStiffness) / span ** 3;
  return ((designed === 0 ? FREE : FIXED) * bendingStiffness) / span;
}

function longestSpan({ supports, length }: Shaft): number {
  const places = supports.map(({ at }) => at).sort((a, b) => a - b);
  const spans = places.slice(1).map((at, i) => at - (places[i] ?? 0));
  return Math.max(0, ...spans) || length;
}

/** The line with each parameter's stiffnesses at `exp(spread · offset)` times their medians. */
export function lineAsBuilt(
  line: ShaftLine,
  parameters: readonly PriorParameter[],
  offsets: ArrayLike<number>,
): ShaftLine {
  const shafts = line.shafts.map((own, shaft) => ({
    ...own,
    supports: own.supports.map((support, index) =>
      parameters.reduce<Support>((changed, { kind, spread, supports }, i) => {
        const found = supports.find((one) => one.shaft === shaft && one.support === index);
        if (found === undefined) return changed;
        const value = found.median * Math.exp(spread * (offsets[i] ?? 0));
        if (kind === 'radial') return { ...changed, radialStiffness: value };
        return { ...changed, fixesSlope: false, angularStiffness: value };
      }, support),
    ),
  }));
  return { ...line, shafts };
}
