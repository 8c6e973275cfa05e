/** The part of fft.js that the core uses; the package brings no types. */
declare module 'fft.js' {
  export default class FFT {
    /** @param size - a power of two greater than 1 */
    constructor(size: number);
    /** Both interleaved, 2 × size long, and not the same array. */
    transform(out: Float64Array, data: Float64Array): void;
    /** The same, divided by size. */
    inverseTransform(out: Float64Array, data: Float64Array): void;
  }
}
