import type { ComparisonRow, RecordingComparison } from '@sternline/core';
import type { TableData } from '../elements/data-table.js';
import { writeAmplitude } from './balance-words.js';

/** What came of a change, in a sentence or two: the orders that moved most first, or that none did. */
export function trialsSentence({ rows }: RecordingComparison): string {
  const moved = rows
    .filter(({ verdict }) => verdict !== 'no difference shown')
    .sort((a, b) => Math.abs(b.decibels) - Math.abs(a.decibels));
  if (moved.length > 0) {
    const rest = moved.length > 2 ? ` ${moved.length - 2} more changed.` : '';
    return `${moved
      .slice(0, 2)
      .map(({ sentence }) => sentence)
      .join(' ')}${rest}`;
  }
  const [withheld] = rows.filter((row) => row.withheld === 'speed' || row.withheld === 'too-short');
  return withheld
    ? 'No difference shown: these two cannot be compared as they are.'
    : 'No difference shown in any order.';
}

/** Each order before and after, its change with its interval, and what that says. */
export function trialsTable({ rows }: RecordingComparison): TableData {
  const channels = new Set(rows.map(({ channel }) => channel));
  return {
    caption: 'Orders before and after',
    columns: ['Order', 'Before', 'After', 'After over before', 'Verdict'],
    rows: rows.map((row) => [
      channels.size > 1 ? `${row.order}× on ${row.channel}` : `${row.order}×`,
      `${writeAmplitude(row.before.amplitude)} ± ${writeAmplitude(Number(row.before.amplitudeError.toPrecision(2)), row.unit)}`,
      `${writeAmplitude(row.after.amplitude)} ± ${writeAmplitude(Number(row.after.amplitudeError.toPrecision(2)), row.unit)}`,
      changeText(row),
      row.verdict,
    ]),
  };
}

function changeText({ ratio, interval }: ComparisonRow): string {
  const percent = (value: number) =>
    Number.isFinite(value) ? `${Number((100 * value).toPrecision(2))} %` : 'any';
  return `${percent(ratio)} (${percent(interval[0])} to ${percent(interval[1])})`;
}
