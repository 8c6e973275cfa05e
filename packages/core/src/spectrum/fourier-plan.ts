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

/** Odd factors up to here are taken apart; above them the chirp is quicker. */
const LARGEST_FACTOR = 15;

/**
 * Prepares transforms of any length: powers of two go straight to fft.js, a small odd multiple of one by as many transforms
 * of that power, other lengths by the chirp-z identity kn = (k² + n² − (k − n)²) / 2, which turns the sum into a convolution
 * of a power-of-two length.
 *
 * @param length - N, 2 or more
 * @see Cooley and Tukey, "An algorithm for the machine calculation of complex Fourier series", Math. Comp. 19, 1965
 * @see Bluestein, "A linear filtering approach to the computation of discrete Fourier transform", IEEE Trans. Audio 18(4), 1970
 */
export function createFourierPlan(length: number): FourierPlan {
  const power = length & -length;
  if (power === length) return powerOfTwo(length);
  return length / power <= LARGEST_FACTOR && power >= 8 ? oddMultiple(length, power) : bluestein(length);
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

/** X(k + jQ) = Σᵣ e^(−2πir(k + jQ)/N) Xᵣ(k), Xᵣ the transform of every m-th sample from r on, N = mQ. */
function oddMultiple(length: number, power: number): FourierPlan {
  const factor = length / power;
  const fft = new FFT(power);
  const part = new Float64Array(2 * power);
  const spectra = Array.from({ length: factor }, () => new Float64Array(2 * power));
  const circle = unitCircle(length);
  const transform = (out: Float64Array, data: Float64Array): void => {
    spectra.forEach((spectrum, r) => {
      for (let n = 0; n < power; n++) {
        part[2 * n] = data[2 * (r + factor * n)] ?? 0;
        part[2 * n + 1] = data[2 * (r + factor * n) + 1] ?? 0;
      }
      fft.transform(spectrum, part);
    });
    out.fill(0, 0, 2 * length);
    spectra.forEach((spectrum, r) => {
      addTurned(out, spectrum, { circle, r });
    });
  };
  return { length, transform };
}

/** out(k) += e^(−2πirk/N) · spectrum(k mod Q) */
function addTurned(
  out: Float64Array,
  spectrum: Float64Array,
  { circle, r }: { circle: Float64Array; r: number },
): void {
  const length = circle.length / 2;
  const power = spectrum.length;
  for (let k = 0, turn = 0, i = 0; k < length; k++) {
    const cosine = circle[2 * turn] ?? 0;
    const sine = circle[2 * turn + 1] ?? 0;
    const real = spectrum[i] ?? 0;
    const imaginary = spectrum[i + 1] ?? 0;
    out[2 * k] = (out[2 * k] ?? 0) + real * cosine - imaginary * sine;
    out[2 * k + 1] = (out[2 * k + 1] ?? 0) + real * sine + imaginary * cosine;
    turn += r;
    if (turn >= length) turn -= length;
    i += 2;
    if (i === power) i = 0;
  }
}

/** e^(−2πin/N), n = 0 … N − 1 */
function unitCircle(length: number): Float64Array {
  const circle = new Float64Array(2 * length);
  for (let n = 0; n < length; n++) {
    circle[2 * n] = Math.cos((2 * Math.PI * n) / length);
    circle[2 * n + 1] = -Math.sin((2 * Math.PI * n) / length);
  }
  return circle;
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
