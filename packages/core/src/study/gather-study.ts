import { quantile } from '../numerics/quantile.js';
import type { ToleranceAxis } from './draw-line.js';
import type { SampledCritical, SampleFigures, SampleLayout } from './sample-figures.js';
import type { BandSpread, CriticalSpread, Sensitivity, Spread, ToleranceStudy } from './tolerance-types.js';
import type { AvoidBand, Verdict } from './types.js';

interface Gathered {
  readonly layout: SampleLayout;
  readonly nominal: SampleFigures;
  readonly drawn: readonly SampleFigures[];
  /** One column for each measure. */
  readonly inputs: readonly Float64Array[];
  readonly axes: readonly ToleranceAxis[];
  readonly redrawn: number;
  readonly seed: number;
}

/** Spreads, chances and sensitivities of the samples of a study. */
export function gatherStudy(gathered: Gathered): ToleranceStudy {
  const { layout, nominal, drawn, redrawn, seed } = gathered;
  const criticalSpeeds = nominal.criticals.map((critical) => criticalSpread(critical, drawn));
  const decisive = decisiveSpread(criticalSpeeds, layout);
  const hits = drawn.filter(({ bands }) => bands.some((band) => contains(band, layout.speed))).length;
  return {
    samples: drawn.length,
    seed,
    redrawn,
    criticalSpeeds,
    bands: nominal.bands.map((band) => bandSpread(band, { drawn, speed: layout.speed })),
    speedLimit: spread(
      nominal.speedLimit,
      drawn.map((sample) => sample.speedLimit),
    ),
    fluctuation: spread(
      nominal.fluctuation,
      drawn.map((sample) => sample.fluctuation),
    ),
    verdict: verdictShares(drawn),
    ...chance(hits, drawn.length, { share: 'chanceInBand', error: 'chanceInBandError' }),
    decisive: placeOf(decisive),
    sensitivities: sensitivities(gathered, decisive.values),
  };
}

function spread(nominal: number, samples: readonly number[]): Spread {
  const values = Float64Array.from(samples);
  const sorted = values.slice().sort();
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return {
    nominal,
    mean,
    standardDeviation: values.length > 1 ? Math.sqrt(squares / (values.length - 1)) : 0,
    low: quantile(sorted, 0.05),
    median: quantile(sorted, 0.5),
    high: quantile(sorted, 0.95),
    values,
  };
}

function criticalSpread(critical: SampledCritical, drawn: readonly SampleFigures[]): CriticalSpread {
  const speeds = drawn.map(
    ({ criticals }) => criticals.find((one) => same(one, critical))?.speed ?? Infinity,
  );
  return { ...spread(critical.speed, speeds), ...placeOf(critical) };
}

type Place = Pick<CriticalSpread, 'excitation' | 'order' | 'whirl' | 'mode'>;

function placeOf({ excitation, order, whirl, mode }: Place): Place {
  return { excitation, order, whirl, mode };
}

function same(a: Place, b: Place): boolean {
  return a.excitation === b.excitation && a.order === b.order && a.whirl === b.whirl && a.mode === b.mode;
}

/** The critical speed whose band, as entered, has an edge nearest to the wanted speed. */
function decisiveSpread(
  criticals: readonly CriticalSpread[],
  { speed, excitations }: SampleLayout,
): CriticalSpread {
  const distance = ({ nominal, excitation }: CriticalSpread): number => {
    const margin = excitations.find((source) => source.excitation === excitation)?.margin ?? 0;
    return Math.min(...[1 - margin, 1 + margin].map((edge) => Math.abs(Math.log((nominal * edge) / speed))));
  };
  return criticals.reduce((nearest, one) => (distance(one) < distance(nearest) ? one : nearest));
}

function contains({ from, to }: { readonly from: number; readonly to: number }, speed: number): boolean {
  return speed >= from && speed <= to;
}

function bandSpread(
  band: AvoidBand,
  { drawn, speed }: { readonly drawn: readonly SampleFigures[]; readonly speed: number },
): BandSpread {
  const twins = drawn.flatMap(({ bands }) => bands.find(({ name }) => name === band.name) ?? []);
  const from = Float64Array.from(twins, (twin) => twin.from).sort();
  const to = Float64Array.from(twins, (twin) => twin.to).sort();
  const hits = twins.filter((twin) => contains(twin, speed)).length;
  const { name, excitation, order, mode } = band;
  return {
    name,
    excitation,
    order,
    mode,
    from: quantile(from, 0.05),
    to: quantile(to, 0.95),
    nominalFrom: band.from,
    nominalTo: band.to,
    ...chance(hits, drawn.length, { share: 'chance', error: 'chanceError' }),
  };
}

/** A share of the samples with the standard error of a binomial one; a share of 0 or 1 is known to about 1/n. */
function chance<Share extends string, Failure extends string>(
  hits: number,
  count: number,
  names: { readonly share: Share; readonly error: Failure },
): Record<Share | Failure, number> {
  const share = hits / count;
  const error = Math.max(
    Math.sqrt((share * (1 - share)) / count),
    hits === 0 || hits === count ? 1 / count : 0,
  );
  return { [names.share]: share, [names.error]: error } as Record<Share | Failure, number>;
}

function verdictShares(drawn: readonly SampleFigures[]): Record<Verdict, number> {
  const shareOf = (verdict: Verdict): number =>
    drawn.filter((sample) => sample.verdict === verdict).length / drawn.length;
  return { clear: shareOf('clear'), near: shareOf('near'), inside: shareOf('inside') };
}

function sensitivities({ axes, inputs }: Gathered, target: Float64Array): Sensitivity[] {
  return axes
    .map(({ at }, i) => ({ path: at.path, ...regression(inputs[i] ?? new Float64Array(0), target) }))
    .sort((a, b) => b.share - a.share);
}

/** Slope of y on x, and the share of the variance of y that goes with x. */
function regression(x: Float64Array, y: Float64Array): { readonly share: number; readonly slope: number } {
  const meanX = x.reduce((sum, value) => sum + value, 0) / x.length;
  const meanY = y.reduce((sum, value) => sum + value, 0) / y.length;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  x.forEach((value, i) => {
    const dx = value - meanX;
    const dy = (y[i] ?? 0) - meanY;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  });
  if (!(xx > 0 && yy > 0)) return { share: 0, slope: 0 };
  return { share: (xy * xy) / (xx * yy), slope: xy / xx };
}
