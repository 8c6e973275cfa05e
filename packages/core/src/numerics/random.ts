/** A stream of random numbers that its seed fixes. */
export interface Random {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Normal with mean 0 and standard deviation 1. */
  normal(): number;
}

/**
 * Seeded random numbers: the same seed gives the same stream on every machine.
 *
 * @param seed - any finite number; its low 32 bits are used
 * @see Sebastiano Vigna and David Blackman, "Scrambled linear pseudorandom number generators", ACM TOMS 47(4), 2021
 *   (xoshiro128**), seeded by SplitMix32 steps; normal deviates by Marsaglia's polar method, SIAM Review 6(3), 1964
 */
export function createRandom(seed: number): Random {
  const next = xoshiro128(seed);
  const uniform = (): number => next() / 4294967296;
  let spare: number | undefined;
  const normal = (): number => {
    if (spare !== undefined) {
      const value = spare;
      spare = undefined;
      return value;
    }
    const [first, second] = polarPair(uniform);
    spare = second;
    return first;
  };
  return { uniform, normal };
}

function polarPair(uniform: () => number): [number, number] {
  for (;;) {
    const u = 2 * uniform() - 1;
    const v = 2 * uniform() - 1;
    const s = u * u + v * v;
    if (s > 0 && s < 1) {
      const scale = Math.sqrt((-2 * Math.log(s)) / s);
      return [u * scale, v * scale];
    }
  }
}

function xoshiro128(seed: number): () => number {
  const state = new Uint32Array(4);
  let mix = seed >>> 0;
  for (let i = 0; i < 4; i++) {
    mix = (mix + 0x9e3779b9) >>> 0;
    let z = Math.imul(mix ^ (mix >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    state[i] = z ^ (z >>> 16);
  }
  return () => step(state);
}

function step(state: Uint32Array): number {
  const [a = 0, b = 0, c = 0, d = 0] = state;
  const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
  const shifted = b << 9;
  const c2 = c ^ a;
  const d2 = d ^ b;
  state[0] = a ^ d2;
  state[1] = b ^ c2;
  state[2] = c2 ^ shifted;
  state[3] = rotate(d2, 11);
  return result;
}

function rotate(x: number, k: number): number {
  return (x << k) | (x >>> (32 - k));
}
