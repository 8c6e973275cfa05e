import type { RingReading } from './types.js';

interface Guess {
  /** rad/s, of the ring. */
  readonly turning: number;
  /** 1/s */
  readonly decay: number;
}

/** A fit, with the share of the ring's energy that it leaves over. */
export interface RingFit extends RingReading {
  readonly left: number;
}

/**
 * Least-squares fit of e^(−σt) (a cos ωt + b sin ωt) to a ring, by Gauss–Newton steps in σ, ω, a and b.
 *
 * @param samples - one ring, from its start
 * @param sampleRate - Hz
 * @param guess - near enough: within a tenth of the frequency
 * @returns frequency, damping ratio σ / √(σ² + ω²) and their standard errors from the residual, the noise taken for white
 */
export function fitDecayingSine(samples: ArrayLike<number>, sampleRate: number, guess: Guess): RingFit {
  let [decay, turning] = [guess.decay, guess.turning];
  let amplitudes = linearPart(samples, sampleRate, { decay, turning });
  let error = amplitudes.residual;
  for (let round = 0; round < 30; round++) {
    const { step } = newton(samples, sampleRate, { decay, turning, ...amplitudes });
    let [scale, better] = [1, false];
    for (; scale > 1e-4; scale /= 2) {
      const trial = { decay: Math.max(0, decay + scale * step[0]), turning: turning + scale * step[1] };
      const next = linearPart(samples, sampleRate, trial);
      if (next.residual >= error) continue;
      better = error - next.residual > 1e-13 * error;
      [decay, turning, amplitudes, error] = [trial.decay, trial.turning, next, next.residual];
      break;
    }
    if (!better) break;
  }
  const { variance } = newton(samples, sampleRate, { decay, turning, ...amplitudes });
  const noise = error / Math.max(1, samples.length - 4);
  const natural = Math.hypot(decay, turning);
  const energy = Array.from(samples).reduce((sum, x) => sum + x * x, 0);
  return {
    left: energy > 0 ? error / energy : 0,
    frequency: turning / (2 * Math.PI),
    frequencyError: Math.sqrt(noise * variance[1]) / (2 * Math.PI),
    damping: decay / natural,
    dampingError: Math.sqrt(noise * variance[0]) / natural,
  };
}

interface LinearPart {
  readonly cosine: number;
  readonly sine: number;
  /** Sum of squares that is left. */
  readonly residual: number;
}

/** The best a and b for given σ and ω. */
function linearPart(samples: ArrayLike<number>, sampleRate: number, { decay, turning }: Guess): LinearPart {
  let [cc, cs, ss, cx, sx, xx] = [0, 0, 0, 0, 0, 0];
  for (let n = 0; n < samples.length; n++) {
    const t = n / sampleRate;
    const size = Math.exp(-decay * t);
    const c = size * Math.cos(turning * t);
    const s = size * Math.sin(turning * t);
    const x = samples[n] ?? 0;
    cc += c * c;
    cs += c * s;
    ss += s * s;
    cx += c * x;
    sx += s * x;
    xx += x * x;
  }
  const determinant = cc * ss - cs * cs;
  const cosine = determinant > 0 ? (ss * cx - cs * sx) / determinant : 0;
  const sine = determinant > 0 ? (cc * sx - cs * cx) / determinant : 0;
  return { cosine, sine, residual: Math.max(0, xx - cosine * cx - sine * sx) };
}

/**
 * Gauss–Newton step in σ and ω with a and b free (their columns projected out), and the diagonal of the inverse normal matrix.
 */
function newton(
  samples: ArrayLike<number>,
  sampleRate: number,
  { decay, turning, cosine, sine }: Guess & LinearPart,
): { step: readonly [number, number]; variance: readonly [number, number] } {
  const columns: [number[], number[], number[], number[]] = [[], [], [], []];
  const rest: number[] = [];
  for (let n = 0; n < samples.length; n++) {
    const t = n / sampleRate;
    const size = Math.exp(-decay * t);
    const c = size * Math.cos(turning * t);
    const s = size * Math.sin(turning * t);
    columns[0].push(c);
    columns[1].push(s);
    columns[2].push(-t * (cosine * c + sine * s));
    columns[3].push(t * (sine * c - cosine * s));
    rest.push((samples[n] ?? 0) - cosine * c - sine * s);
  }
  const [first, second, third, fourth] = columns;
  const basis = [first, projected(second, [first])];
  const slope = projected(third, basis);
  const turn = projected(fourth, basis);
  const [aa, ab, bb] = [inner(slope, slope), inner(slope, turn), inner(turn, turn)];
  const [ar, br] = [inner(slope, rest), inner(turn, rest)];
  const determinant = aa * bb - ab * ab;
  if (!(determinant > 0)) return { step: [0, 0], variance: [Infinity, Infinity] };
  return {
    step: [(bb * ar - ab * br) / determinant, (aa * br - ab * ar) / determinant],
    variance: [bb / determinant, aa / determinant],
  };
}

/** The part of `column` at right angles to all of `basis`, whose members stand at right angles to each other. */
function projected(column: readonly number[], basis: readonly (readonly number[])[]): number[] {
  let left = [...column];
  for (const along of basis) {
    const square = inner(along, along);
    const share = square > 0 ? inner(left, along) / square : 0;
    left = left.map((value, n) => value - share * (along[n] ?? 0));
  }
  return left;
}

function inner(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, n) => sum + value * (b[n] ?? 0), 0);
}
