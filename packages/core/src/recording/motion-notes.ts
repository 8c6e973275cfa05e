import { type Plan } from './choose-columns.js';
import { levelPumpingNote } from './level-pumping-note.js';
import { type LaidRows } from './lay-in-time.js';
import { type RawColumns } from './read-columns.js';
import { type Scale } from './scale-axes.js';
import { type Table } from './text-table.js';
import { type BadCells, type Sampling } from './types.js';

interface Told {
  readonly table: Table;
  readonly plan: Plan;
  readonly raw: RawColumns;
  readonly scale: Scale;
  readonly laid: LaidRows;
  readonly sampling: Omit<Sampling, 'notes'>;
}

/** Sentences for the person who made the recording. */
export function motionNotes(told: Told): string[] {
  return [
    ...told.scale.notes,
    ...told.laid.notes,
    ...timeNotes(told),
    ...rowNotes(told),
    ...valueNotes(told),
    ...levelPumpingNote(told.sampling.levelPumping),
    ...resolutionNotes(told),
    ...columnNotes(told),
  ];
}

function timeNotes({ laid, sampling, table }: Told): string[] {
  const { fitted, rateFrom, equalStamps, doubledRows } = laid;
  const { step, jitter, period, kind } = fitted;
  const notes: string[] = [];
  if (rateFrom !== 'stamps') return notes;
  const rate = figure(1 / period);
  if (kind === 'counts' && step > 4 * period) {
    notes.push(
      `The stamps are rounded to ${figure(step)} s, ${figure(step / period)} samples long: too coarse to trust one by one. The rate of ${rate} Hz comes from counting rows over the whole recording; short gaps cannot be seen.`,
    );
  } else if (kind === 'counts' && (equalStamps > 0 || jitter > 0.03 * period)) {
    notes.push(
      `The stamps scatter or are rounded (${figure(1000 * jitter)} ms about an even count), so the samples were taken by their count: ${rate} Hz.`,
    );
  }
  if (equalStamps > 0) notes.push(`${equalStamps} rows have the same stamp as the row before.`);
  if (doubledRows > 0)
    notes.push(`${doubledRows} rows repeat the row before in stamp and values and were left out.`);
  if (kind === 'piecewise') {
    notes.push(
      `The sampling rate moved between ${figure(1 / fitted.longestPeriod)} and ${rate} Hz; the samples were interpolated to ${rate} Hz, and amplitudes hold up to ${figure(sampling.passband ?? 0)} Hz.`,
    );
  }
  if (kind === 'stamps') {
    notes.push(
      `The samples were taken at irregular times (${figure(1000 * jitter)} ms from step to step); they were interpolated to ${rate} Hz, and amplitudes hold up to ${figure(sampling.passband ?? 0)} Hz.`,
    );
  }
  const stated = table.stated.rate;
  if (stated !== undefined && Math.abs(stated * period - 1) > 0.01) {
    notes.push(`The head states ${stated} Hz, the stamps give ${rate} Hz: the stamps were followed.`);
  }
  return notes;
}

function rowNotes({ raw, sampling }: Told): string[] {
  const notes: string[] = [];
  const lost = sampling.gaps.reduce((sum, { count }) => sum + count, 0);
  if (lost > 0) {
    notes.push(
      `${lost} samples are missing in ${plural(sampling.gaps.length, 'gap')}; they lie on a straight line and are not to be analysed.`,
    );
  }
  if (raw.badCells.count > 0)
    notes.push(`${plural(raw.badCells.count, 'cell')} without a figure (${linesOf(raw.badCells)}).`);
  if (raw.raggedRows.count > 0)
    notes.push(
      `${plural(raw.raggedRows.count, 'row')} of another length left out (${linesOf(raw.raggedRows)}).`,
    );
  return notes;
}

function valueNotes({ sampling, scale }: Told): string[] {
  const notes = sampling.clipping.map(
    ({ channel, count, level }) =>
      `${channel} stands at its limit of ${figure(level)} ${scale.unit} in ${plural(count, 'sample')}: the true peaks are higher, and no amplitude on ${channel} is to be trusted there.`,
  );
  const still = [...new Set((sampling.stuck ?? []).map(({ channel }) => channel))];
  if (still.length > 0)
    notes.push(
      `${still.join(', ')} ${still.length === 1 ? 'stands' : 'stand'} still for a while or throughout, as a sensor does that hangs or is not there.`,
    );
  if (heldShare(sampling) > 0.25) {
    notes.push(
      `${Math.round(100 * heldShare(sampling))} % of the rows repeat the row before: the sensor is slower than the logger, and the true rate is lower.`,
    );
  }
  if (sampling.gravity === 'removed') notes.push('Gravity is not in the samples.');
  return notes;
}

/** m/s², steps that are told: browsers round to 0.1, native loggers far finer. */
const COARSE = 0.05;

function resolutionNotes({ sampling, scale }: Told): string[] {
  const step = Math.max(0, ...(sampling.resolution ?? []).map((entry) => entry.step));
  if (scale.unit !== 'm/s²' || step < COARSE) return [];
  return [
    `The values are rounded to ${figure(step)} ${scale.unit}: shaking of less than half of that may not show at all.`,
  ];
}

function heldShare(sampling: Omit<Sampling, 'notes'>): number {
  const samples = (sampling.passband ?? 0) * 2 * sampling.duration;
  return (sampling.heldRows ?? 0) / Math.max(samples, 1);
}

function columnNotes({ plan }: Told): string[] {
  const notes: string[] = [];
  const unused = plan.readings.filter(
    ({ role, reason }) => role === 'unused' && reason.startsWith('a second time'),
  );
  for (const { header } of unused) notes.push(`"${header}" is a second time column and was not used.`);
  const other = plan.sensors.filter(({ name }) => name !== plan.sensor?.name && name !== plan.quantity);
  if (plan.sensors.length > 1 && other.length > 0) {
    notes.push(
      `The file also holds ${other.map(({ name }) => `"${name}"`).join(', ')}; options.sensor reads it by that name.`,
    );
  }
  const guessed = plan.axes.filter(({ confidence }) => confidence < 0.7);
  if (guessed.length > 0)
    notes.push('The columns have no names that tell the axes, so they were taken by their place.');
  return notes;
}

function linesOf({ count, lines }: BadCells): string {
  return `line${lines.length === 1 ? '' : 's'} ${lines.join(', ')}${count > lines.length ? ' …' : ''}`;
}

function plural(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

function figure(value: number): string {
  return String(Number(value.toPrecision(4)));
}
