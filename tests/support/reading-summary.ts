import type { Reading } from './reading-trials.js';

/** A share of trials, with how many there were. */
export interface Share {
  readonly count: number;
  readonly share: number;
}

export interface Bin extends Share {
  readonly from: number;
  readonly to: number;
  /** Mean of the confidence that was stated. */
  readonly stated: number;
}

export interface Summary {
  readonly trials: number;
  readonly speed: Readonly<Record<string, Share>>;
  readonly calibration: readonly Bin[];
  /** Median and 95th percentile of the relative error of the speed, told within 1 %, that the orders give. */
  readonly speedError: Readonly<Record<string, { count: number; median: number; most: number }>>;
  readonly amplitude: Readonly<
    Record<string, { count: number; median: number; most: number; withinOne: number; withinTwo: number }>
  >;
  readonly ordersFound: Share;
  readonly speedFromNothing: Share;
  readonly findingFromNothing: Share;
}

const EDGES = [0, 0.2, 0.4, 0.6, 0.8, 0.9, 1];

export function summarise(readings: readonly Reading[]): Summary {
  const running = readings.filter(({ trial }) => trial.fault !== 'nothing');
  const nothing = readings.filter(({ trial }) => trial.fault === 'nothing');
  const right = (some: readonly Reading[]): Share => shareOf(some, ({ estimate }) => estimate.right);
  const beyond = ({ trial }: Reading) => trial.range[1] / (2 * Math.PI) > trial.sampleRate / 2;
  const kinds: Record<string, (reading: Reading) => boolean> = {
    'all that run': () => true,
    'motion, range within half the rate': (r) => r.trial.kind === 'motion' && !beyond(r),
    'motion, range beyond half the rate': (r) => r.trial.kind === 'motion' && beyond(r),
    sound: (r) => r.trial.kind === 'sound',
    'line known': (r) => r.trial.hinted,
    'line not known': (r) => !r.trial.hinted,
    'mains hum': (r) => r.trial.fault === 'mains',
    'a panel that rings': (r) => r.trial.fault === 'panel',
    'a loose part': (r) => r.trial.fault === 'loose',
  };
  const runs: Record<string, (reading: Reading) => boolean> = {
    steady: ({ trial }) => trial.wander === 0 && trial.jitter === 0,
    'speed wanders up to 0.8 %': ({ trial }) => trial.wander > 0,
    'stamps jitter, speed steady': ({ trial }) => trial.jitter > 0 && trial.wander === 0,
  };
  const over = <T>(of: (some: readonly Reading[]) => T): Record<string, T> =>
    Object.fromEntries(Object.entries(runs).map(([name, is]) => [name, of(running.filter(is))]));
  return {
    trials: readings.length,
    speed: Object.fromEntries(Object.entries(kinds).map(([name, is]) => [name, right(running.filter(is))])),
    calibration: calibrationOf(readings),
    speedError: over(speedErrorOf),
    amplitude: over(amplitudeOf),
    ordersFound: {
      count: sum(running, ({ there }) => there),
      share: sum(running, ({ found }) => found) / sum(running, ({ there }) => there),
    },
    speedFromNothing: shareOf(nothing, ({ estimate }) => estimate.confidence >= 0.5),
    findingFromNothing: shareOf(nothing, ({ findings }) => findings > 0),
  };
}

function shareOf(some: readonly Reading[], is: (reading: Reading) => boolean): Share {
  return { count: some.length, share: some.filter(is).length / Math.max(1, some.length) };
}

function sum(some: readonly Reading[], of: (reading: Reading) => number): number {
  return some.reduce((total, reading) => total + of(reading), 0);
}

function calibrationOf(readings: readonly Reading[]): Bin[] {
  const claimed = readings.filter(({ estimate }) => estimate.claimed);
  return EDGES.slice(0, -1).flatMap((from, i) => {
    const to = EDGES[i + 1]!;
    const inside = claimed.filter(
      ({ estimate: { confidence } }) => confidence >= from && (confidence < to || to === 1),
    );
    if (inside.length === 0) return [];
    const stated = sum(inside, ({ estimate }) => estimate.confidence) / inside.length;
    return [{ from, to, stated, ...shareOf(inside, ({ estimate }) => estimate.right) }];
  });
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

function speedErrorOf(some: readonly Reading[]): Summary['speedError'][string] {
  const errors = some.map(({ speedError }) => Math.abs(speedError)).filter(Number.isFinite);
  return { count: errors.length, median: quantile(errors, 0.5), most: quantile(errors, 0.95) };
}

function amplitudeOf(some: readonly Reading[]): Summary['amplitude'][string] {
  const all = some.flatMap(({ amplitudes }) => amplitudes);
  const errors = all.map(({ relative }) => Math.abs(relative));
  const within = (most: number): number =>
    all.filter(({ normal }) => Math.abs(normal) < most).length / all.length;
  return {
    count: all.length,
    median: quantile(errors, 0.5),
    most: quantile(errors, 0.95),
    withinOne: within(1),
    withinTwo: within(2),
  };
}

export function summaryText(summary: Summary): string {
  const percent = (share: number, digits = 0): string => `${(100 * share).toFixed(digits)} %`;
  const row = (...cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;
  const head = (...cells: readonly string[]): string[] => [
    row(...cells),
    row(...cells.map((_, i) => (i ? '--:' : '---'))),
  ];
  const entries = <T>(record: Readonly<Record<string, T>>): [string, T][] => Object.entries(record);
  return [
    '# How well a trial is read',
    '',
    `Made by \`pnpm report:reading\` from ${summary.trials} seeded trials of the simulator. The confidence of a speed was fitted on other`,
    'seeds of it; this set was read again after each fit to see whether it was enough, so it is not wholly independent. The invented',
    'example line runs at 10 to 70 Hz (motion) or 20 to 160 Hz (sound); phones of 53 to 500 Hz and of 8 to 48 kHz, noise over a',
    'range of 20, values rounded as phones do, two in five with a speed that wanders, two in five with stamps that jitter; even,',
    'out of balance, at a joint angle, loose, beside mains hum, with a panel that rings, or with nothing to be seen. Orders fold where the',
    'rate is low. The search range is a half to nearly three times the speed, at random. The tests read a hundred of these trials again',
    'and hold them against this page. A real machine is not bound by a simulator: take the figures as the best case of their kind.',
    '',
    '## Shaft speed from the recording alone',
    '',
    'Right means the likeliest speed within 2 %; no speed found counts as wrong.',
    '',
    ...head('trials', 'how many', 'right'),
    ...entries(summary.speed).map(([name, { count, share }]) => row(name, count, percent(share))),
    '',
    '## Stated confidence against what came true',
    '',
    ...head('stated', 'how many', 'mean stated', 'right', '± (one standard deviation)'),
    ...summary.calibration.map(({ from, to, count, stated, share }) =>
      row(
        `${from} to ${to}`,
        count,
        stated.toFixed(2),
        share.toFixed(2),
        Math.sqrt((stated * (1 - stated)) / count).toFixed(2),
      ),
    ),
    '',
    '## Speed refined by the orders',
    '',
    'The speed was told within 1 %; relative error after refining, where any order stood above the noise.',
    '',
    ...head('trials', 'how many', 'median', '95 in 100 below'),
    ...entries(summary.speedError).map(([name, { count, median, most }]) =>
      row(name, count, percent(median, 3), percent(most, 2)),
    ),
    '',
    '## Amplitude of orders',
    '',
    'Orders that stand above the noise, apart from others and below half the rate; errors against what was put in.',
    '',
    ...head('trials', 'orders', 'median error', '95 in 100 below', 'within one stated error', 'within two'),
    ...entries(summary.amplitude).map(([name, a]) =>
      row(
        name,
        a.count,
        percent(a.median, 1),
        percent(a.most, 0),
        percent(a.withinOne),
        percent(a.withinTwo),
      ),
    ),
    '',
    `Of ${summary.ordersFound.count} orders of five times the noise or more, ${percent(summary.ordersFound.share)} were seen.`,
    '',
    '## False alarms',
    '',
    `Of ${summary.speedFromNothing.count} trials in which nothing could be seen, ${percent(summary.speedFromNothing.share, 1)} gave a speed with a confidence of a`,
    `half or more, and ${percent(summary.findingFromNothing.share, 1)} gave any finding.`,
    '',
  ].join('\n');
}
