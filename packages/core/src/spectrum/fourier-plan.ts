// The reference is needed where this file is compiled from outside the package, which does not list the declaration.
// eslint-disable-next-line @typescript-eslint/triple-slash-reference
/// <reference path="./fft-js.d.ts" />
import FFT from 'fft.js';

/** A discrete Fourier transform of one length, ready to be used again and again. */
export interface FourierPlan {
  readonly length: number;
  /** X(k) = Σ x(n) e^(−2πikn/N); both arrays interleaved, 2N long, and not the same. */
  transform(out: Float64Array, data: Float64Array): void;
}

/**
 * Prepares transforms of any length: powers of two go straight to fft.js, other lengths by the chirp-z identity
 * kn = (k² + n² − (k − n)²) / 2, which turns the sum into a convolution of a power-of-two length.
 *
 * @param length - N, 2 or more
 * @see Bluestein, "A linear filtering approach to the computation of discrete Fourier transform", IEEE Trans. Audio 18(4), 1970
 */
export function createFourierPlan(length: number): FourierPlan {
  return (length & (length - 1)) === 0 ? powerOfTwo(length) : bluestein(length);
}

function powerOfTwo(length: number): FourierPlan {
  const fft = new FFT(length);
  return {
    length,
    transform: (out, data) => {
      fft.transform(out, data);
    },
  };
}

function bluestein(length: number): FourierPlan {
  const size = 2 ** Math.ceil(Math.log2(2 * length - 1));
  const fft = new FFT(size);
  const chirp = chirpOf(length);
  const kernel = new Float64Array(2 * size);
  const work = new Float64Array(2 * size);
  const spectrum = new Float64Array(2 * size);
  fft.transform(kernel, wrappedConjugate(chirp, size));
  const transform = (out: Float64Array, data: Float64Array): void => {
    work.fill(0);
    multiply(work, data, chirp);
    fft.transform(spectrum, work);
    multiply(spectrum, spectrum, kernel);
    fft.inverseTransform(work, spectrum);
    multiply(out, work, chirp);
  };
  return { length, transform };
}

/** e^(−iπn²/N); n² is taken modulo 2N first, which keeps the angle exact for long segments. */
function chirpOf(length: number): Float64Array {
  const chirp = new Float64Array(2 * length);
  for (let n = 0; n < length; n++) {
    const angle = (Math.PI * ((n * n) % (2 * length))) / length;
    chirp[2 * n] = Math.cos(angle);
    chirp[2 * n + 1] = -Math.sin(angle);
  }
  return chirp;
}

function wrappedConjugate(chirp: Float64Array, size: number): Float64Array {
  const wrapped = new Float64Array(2 * size);
  for (let n = 0; n < chirp.length / 2; n++) {
    const mirror = (size - n) % size;
    const real = chirp[2 * n] ?? 0;
    const imaginary = -(chirp[2 * n + 1] ?? 0);
    wrapped[2 * n] = wrapped[2 * mirror] = real;
    wrapped[2 * n + 1] = wrapped[2 * mirror + 1] = imaginary;
  }
  return wrapped;
}

/** out = a · b, complex, as far as the shortest reaches. */
function multiply(out: Float64Array, a: Float64Array, b: Float64Array): void {
  const end = Math.min(out.length, a.length, b.length);
  for (let i = 0; i < end; i += 2) {
    const aReal = a[i] ?? 0;
    const aImaginary = a[i + 1] ?? 0;
    const bReal = b[i] ?? 0;
    const bImaginary = b[i + 1] ?? 0;
    out[i] = aReal * bReal - aImaginary * bImaginary;
    out[i + 1] = aReal * bImaginary + aImaginary * bReal;
  }
}
