/**
 * The nearest peak on one side of a frequency.
 *
 * @param peaks - with frequencies in Hz, in any order
 * @param where - `from` in Hz; `sign` 1 for higher, −1 for lower; `clear` Hz that it must be away
 * @returns Hz, or undefined where there is none on that side
 */
export function nextPeak(
  peaks: readonly { readonly frequency: number }[],
  where: { readonly from: number; readonly sign: 1 | -1; readonly clear: number },
): number | undefined {
  const { from, sign, clear } = where;
  return peaks
    .map((peak) => peak.frequency)
    .filter((frequency) => sign * (frequency - from) > clear)
    .sort((a, b) => sign * (a - b))[0];
}
