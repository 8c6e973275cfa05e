import type { ShaftLine } from '../line/types.js';
import { costsOf, withShaft, type LineChange } from './line-change.js';
import { figure, makeStatement } from './statement.js';

/** Half of a propeller's hub as a share of its diameter; common practice, no source. */
const HUB = 0.1;
/** An overhang that loses less than this share is left alone. */
const WORTHWHILE = 0.15;

/**
 * The propeller nearer to its bush: half the overhang, but the end of the bush, one diameter of shaft and half the hub stay.
 *
 * Strut to hub about one diameter: published practice of builders.
 */
export function overhangChanges(line: ShaftLine): LineChange[] {
  const index = line.shafts.length - 1;
  const shaft = line.shafts[index];
  const last = shaft?.supports.toSorted((a, b) => b.at - a.at)[0];
  if (!shaft || !last) return [];
  const behind = shaft.discs.filter(({ at }) => at > last.at);
  if (behind.length === 0) return [];
  const nearest = Math.min(...behind.map(({ at }) => at)) - last.at;
  const overhang = Math.max(...behind.map(({ at }) => at)) - last.at;
  const hub = HUB * (line.propeller?.diameter ?? 0);
  const room = (last.length ?? 0) / 2 + shaft.outerDiameter + hub;
  const shift = Math.floor(Math.min(overhang / 2, nearest - room) * 2000) / 2000;
  if (!(shift >= WORTHWHILE * overhang)) return [];
  const figures = { overhang: figure('length', overhang - shift), present: figure('length', overhang) };
  return [
    {
      kind: 'overhang',
      heading: makeStatement('Overhang of {overhang} in place of {present}', figures),
      apply: (one) =>
        withShaft(one, index, (own) => ({
          ...own,
          length: own.length - shift,
          discs: own.discs.map((disc) => (disc.at > last.at ? { ...disc, at: disc.at - shift } : disc)),
        })),
      costs: costsOf({
        work: 3,
        money: 1,
        destructive: 'cutting',
        takes: [
          makeStatement(
            'shaft shortened by {shift} and threaded anew, the propeller one diameter from its bush',
            {
              shift: figure('length', shift),
            },
          ),
        ],
        buy: [],
      }),
    },
  ];
}
