import { refusal } from '../internal/refuse.js';

/** @throws RangeError that names the first sample that is not finite; `where` reads `'function: argument'`. */
export function checkFiniteSamples(where: string, samples: ArrayLike<number>): void {
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n] ?? NaN;
    if (!Number.isFinite(x)) throw refusal(`${where}[${n}]`, 'a finite number', x);
  }
}
