import { describe, expect, it } from 'vitest';
import { amplitudeSpectrum, type AmplitudeSpectrumOptions } from '@sternline/core';
import reference from '../../reference/spectrum/welch.json' with { type: 'json' };

describe('amplitudeSpectrum', () => {
  /** scipy.signal.welch(scaling='spectrum') gives mean squares: A = √(2 P), and √P at 0 and at half the rate. */
  it.each(reference.spectra)('against scipy: $segmentLength samples, $window', (expected) => {
    const { segmentLength, window } = expected;
    const options = { segmentLength, window } as AmplitudeSpectrumOptions;
    const { amplitude } = amplitudeSpectrum(reference.samples, reference.sampleRate, options);
    const largest = Math.max(...amplitude);
    expected.power.forEach((power, k) => {
      const value = Math.sqrt((k === 0 || 2 * k === segmentLength ? 1 : 2) * power);
      expect(Math.abs(amplitude[k]! - value)).toBeLessThanOrEqual(1e-9 * value + 1e-14 * largest);
    });
  });

  /** Goertzel: s = x + 2 cos ω s₁ − s₂, |X|² = s₁² + s₂² − 2 cos ω s₁ s₂ (Oppenheim and Schafer, pp. 585–587). */
  it('agrees with Goertzel on one line', () => {
    const x = reference.samples.slice(0, 300);
    const cosine = 2 * Math.cos((2 * Math.PI * 38) / 300);
    let [a, b] = [0, 0];
    for (const value of x) [a, b] = [value + cosine * a - b, a];
    const expected = (2 * Math.sqrt(a * a + b * b - cosine * a * b)) / 300;
    const options = { window: 'rectangular', detrend: 'none' } as const;
    expect(amplitudeSpectrum(x, 250, options).amplitude[38]).toBeCloseTo(expected, 11);
  });

  /** Published example of the recursion: x = 1, 2, 3, 4, 0, −1, −2, 5 has |X(1)|² = 55.7990 and |X(2)|² = 64. */
  it('agrees with a published transform', () => {
    const { amplitude } = amplitudeSpectrum([1, 2, 3, 4, 0, -1, -2, 5], 8, {
      window: 'rectangular',
      detrend: 'none',
    });
    expect((4 * amplitude[1]!) ** 2).toBeCloseTo(55.799, 3);
    expect((4 * amplitude[2]!) ** 2).toBeCloseTo(64, 10);
  });

  it('refuses an empty signal', () => {
    expect(() => amplitudeSpectrum([], 100)).toThrow(
      new RangeError('amplitudeSpectrum: segmentLength must be a whole number from 2 to 2, got 0'),
    );
  });
});
