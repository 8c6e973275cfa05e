import type { OrderTrack, ResonanceSighting, TrackedOrder } from './types.js';

/** Times the amplitude on either side from which a swell is called a resonance; our choice, above what noise and blades do. */
const LEAST_RISE = 1.6;
/** How far to either side the flanks are looked for, as a ratio of frequencies. */
const FLANK = 1.5;
/** Share of the frequency within which swells of several orders are one. */
const SAME = 0.06;

/**
 * Frequencies at which orders swell and fall again as they pass: resonances, told from orders that merely grow with speed.
 *
 * rise = A(f₀) / max(A(f₁) (f₀/f₁)², A(f₂)), f₁ < f₀ < f₂ the lowest points within half the frequency on either side
 *
 * @param track - orders through a run-up or coast-down, from {@link trackOrders}
 * @returns the strongest rise first; several orders in one entry where they swell at the same frequency, which no forcing does
 * @remarks Growth with the square of the speed, as unbalance has it, counts as no rise. A resonance at the end of the run shows one
 *   flank only and is not claimed. Passed quickly, it swells late: up to a few per cent above its frequency in a run-up.
 * @example
 * ```ts
 * const time = Float64Array.from({ length: 100 }, (_, i) => i / 10);
 * const speed = time.map((t) => 2 * Math.PI * (10 + 4 * t));
 * const hump = (f) => (f / 30) ** 2 / Math.hypot(1 - (f / 30) ** 2, 0.1 * (f / 30));
 * const amplitude = speed.map((w) => hump(w / 2 / Math.PI));
 * const none = amplitude.map(() => 0);
 * const order = { order: 1, channel: 'x', unit: 'm/s²', amplitude, amplitudeError: none, hidden: new Uint8Array(100), channels: [] };
 * const [found] = findResonances({ time, speed, speedFrom: 'given', confidence: 1, orders: [order] });
 * found.frequency // → 30 Hz
 * ```
 */
export function findResonances({ speed, orders }: OrderTrack): ResonanceSighting[] {
  const swells = orders
    .flatMap((order) => swellsOf(order, speed))
    .sort((a, b) => b.rise - a.rise || a.frequency - b.frequency);
  const groups: Swell[][] = [];
  for (const swell of swells) {
    const group = groups.find(([first]) => Math.abs((first?.frequency ?? 0) / swell.frequency - 1) < SAME);
    if (group === undefined) groups.push([swell]);
    else if (!group.some(({ order }) => order === swell.order)) group.push(swell);
  }
  return groups.map((group) => ({
    frequency: group.reduce((sum, { frequency }) => sum + frequency, 0) / group.length,
    orders: group.map(({ order }) => order).sort((a, b) => a - b),
    rise: group[0]?.rise ?? 1,
  }));
}

interface Swell {
  readonly order: number;
  readonly frequency: number;
  readonly rise: number;
}

function swellsOf({ order, amplitude, amplitudeError, hidden }: TrackedOrder, speed: Float64Array): Swell[] {
  const points = Array.from(speed, (value, i) => ({
    frequency: (order * value) / (2 * Math.PI),
    amplitude: amplitude[i] ?? 0,
    error: amplitudeError[i] ?? 0,
    hidden: hidden[i] === 1,
  }))
    .filter((point) => !point.hidden)
    .sort((a, b) => a.frequency - b.frequency);
  return points.flatMap((top) => {
    const near = points.filter(
      ({ frequency }) => frequency > top.frequency / FLANK && frequency < top.frequency * FLANK,
    );
    if (near.some((point) => point.amplitude > top.amplitude) || !(top.amplitude > 4 * top.error)) return [];
    const left = near.filter(({ frequency }) => frequency < top.frequency);
    const right = near.filter(({ frequency }) => frequency > top.frequency);
    if (left.length < 3 || right.length < 3) return [];
    const grown = Math.min(...left.map((point) => sure(point) * (top.frequency / point.frequency) ** 2));
    const rise = top.amplitude / Math.max(grown, Math.min(...right.map(sure)));
    return rise >= LEAST_RISE ? [{ order, frequency: top.frequency, rise }] : [];
  });
}

/** As large as it may well be: a flank lost in noise must not make a peak. */
function sure({ amplitude, error }: { readonly amplitude: number; readonly error: number }): number {
  return amplitude + 2 * error;
}
