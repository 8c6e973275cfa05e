import { over, scaled, times, type Complex } from '../numerics/complex.js';
import type { TwistModel } from './build-twist-model.js';

/** Torque at one end of a bar: `same` times the swing of that end and `other` times that of the far one, N·m/rad. */
export interface DampedBar {
  readonly same: Complex;
  readonly other: Complex;
}

/**
 * The bars and springs of a line that swings at a frequency, a share η of every stress out of step with its strain: one
 * from each node to the next, none where a joint is rigid in twist.
 *
 * k*x cot x and −k*x csc x with k* = k (1 + iη), x = ωt / √(1 + iη): exact, the bar's own inertia included.
 */
export function dampedBars(
  { stiffness, time }: TwistModel,
  { frequency, lossFactor }: { readonly frequency: number; readonly lossFactor: number },
): (DampedBar | undefined)[] {
  const loss: Complex = [1, lossFactor];
  const slowing = over([1, 0], squareRoot(loss));
  return Array.from(stiffness, (real, node) => {
    if (!Number.isFinite(real)) return undefined;
    const spring = scaled(loss, real);
    const phase = scaled(slowing, frequency * (time[node] ?? 0));
    if (phase[0] === 0) return { same: spring, other: scaled(spring, -1) };
    const [sine, cosine] = sineAndCosine(phase);
    const scale = over(times(spring, phase), sine);
    return { same: times(scale, cosine), other: scaled(scale, -1) };
  });
}

function sineAndCosine([a, b]: Complex): readonly [sine: Complex, cosine: Complex] {
  return [
    [Math.sin(a) * Math.cosh(b), Math.cos(a) * Math.sinh(b)],
    [Math.cos(a) * Math.cosh(b), -Math.sin(a) * Math.sinh(b)],
  ];
}

/** Of a number to the right of the imaginary axis. */
function squareRoot([a, b]: Complex): Complex {
  const real = Math.sqrt((a + Math.hypot(a, b)) / 2);
  return [real, b / (2 * real)];
}
