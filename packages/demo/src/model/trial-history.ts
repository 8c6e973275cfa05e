import type { TrialAnalysis } from './analysis-types.js';
import type { LevelTable } from './level-words.js';
import type { Trial, Units } from './project.js';
import { shortFigure } from './short-figure.js';
import { formatFigure } from './units.js';

/** Share by which speeds may differ to be compared: levels grow with the square of speed. */
const SAME_SPEED = 0.05;

/** A trial with what was found in it. */
export interface AnalysedTrial {
  readonly trial: Trial;
  readonly analysis: TrialAnalysis;
}

/**
 * The trials of a line that a trial may be compared with: of the same quantity, at about the same speed.
 *
 * @param open - the trial on show
 * @param others - those that were analysed, itself among them or not
 */
export function comparableTrials(open: AnalysedTrial, others: readonly AnalysedTrial[]): AnalysedTrial[] {
  const unit = open.analysis.levels[0]?.unit;
  return others.filter(
    ({ trial, analysis }) =>
      trial.id !== open.trial.id &&
      trial.lineId === open.trial.lineId &&
      trial.speed !== undefined &&
      analysis.levels[0]?.unit === unit &&
      Math.abs(analysis.speed / open.analysis.speed - 1) <= SAME_SPEED,
  );
}

/**
 * The levels of a trial beside those of others, the trial itself first.
 *
 * @param open - the trial on show
 * @param others - as {@link comparableTrials} gives them
 * @param units - metric or inch
 */
export function historyTable(
  open: AnalysedTrial,
  others: readonly AnalysedTrial[],
  units: Units,
): LevelTable {
  const unit = open.analysis.levels[0]?.unit ?? '';
  const orders = open.analysis.diagnosis.orders.filter(({ seen }) => seen).map(({ order }) => order);
  const shown = orders.slice(0, 4);
  return {
    caption: 'This trial beside the line’s others at about this speed',
    columns: ['Trial', 'Speed', `rms, ${unit}`, ...shown.map((order) => `${order}×, ${unit}`)],
    rows: [open, ...others].map(({ trial, analysis }) => [
      trial.id === open.trial.id ? `${trial.name} (this one)` : trial.name,
      formatFigure(analysis.speed, 'speed', units),
      shortFigure(analysis.levels[0]?.rms ?? NaN),
      ...shown.map((order) => orderText(analysis, order)),
    ]),
  };
}

function orderText({ diagnosis }: TrialAnalysis, order: number): string {
  const found = diagnosis.orders.find((one) => one.order === order);
  if (!found) return '–';
  return found.seen
    ? shortFigure(found.amplitude)
    : `under ${shortFigure(found.amplitude + 2 * found.amplitudeError, 2)}`;
}
