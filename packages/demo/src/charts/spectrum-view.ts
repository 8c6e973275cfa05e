/** The stretch of frequency that a spectrum shows. */
export interface SpectrumView {
  /** Hz */
  readonly from: number;
  /** Hz */
  readonly to: number;
}

/** The narrowest view, as a share of the whole. */
const NARROWEST = 1 / 2000;

/**
 * Zooms about a frequency that stays where it is on the page.
 *
 * @param view - what is shown now
 * @param change - `factor` below 1 shows less, above 1 more; `about` in Hz; `whole` the stretch there is
 * @returns the new view, inside the whole
 */
export function zoomView(
  view: SpectrumView,
  change: { readonly factor: number; readonly about: number; readonly whole: SpectrumView },
): SpectrumView {
  const { factor, about, whole } = change;
  const span = whole.to - whole.from;
  const width = Math.min(span, Math.max(span * NARROWEST, (view.to - view.from) * factor));
  const share = (about - view.from) / (view.to - view.from);
  return inside({ from: about - share * width, to: about + (1 - share) * width }, whole);
}

/**
 * Moves the view by a share of its own width.
 *
 * @param view - what is shown now
 * @param change - `share` of the width, positive to higher frequency; `whole` the stretch there is
 * @returns the new view, inside the whole
 */
export function panView(
  view: SpectrumView,
  change: { readonly share: number; readonly whole: SpectrumView },
): SpectrumView {
  const step = (view.to - view.from) * change.share;
  return inside({ from: view.from + step, to: view.to + step }, change.whole);
}

/**
 * The view to open with: wide enough for the orders in question and the strongest peaks, and no wider.
 *
 * @param frequencies - Hz, what must be in sight
 * @param whole - the stretch there is
 * @returns from 0 to a little beyond the highest of them
 */
export function openingView(frequencies: readonly number[], whole: SpectrumView): SpectrumView {
  const highest = Math.max(0, ...frequencies.filter((frequency) => frequency <= whole.to));
  return { from: whole.from, to: highest > 0 ? Math.min(whole.to, highest * 1.15) : whole.to };
}

/**
 * Moves the view, where it must, so that a frequency is in sight.
 *
 * @param view - what is shown now
 * @param change - `at` in Hz; `whole` the stretch there is
 * @returns the same view where the frequency is in it, else one as wide with it in the middle
 */
export function followView(
  view: SpectrumView,
  change: { readonly at: number; readonly whole: SpectrumView },
): SpectrumView {
  const { at, whole } = change;
  if (at >= view.from && at <= view.to) return view;
  const half = (view.to - view.from) / 2;
  return inside({ from: at - half, to: at + half }, whole);
}

function inside(view: SpectrumView, whole: SpectrumView): SpectrumView {
  const width = view.to - view.from;
  const from = Math.min(Math.max(view.from, whole.from), whole.to - width);
  return { from, to: from + width };
}
