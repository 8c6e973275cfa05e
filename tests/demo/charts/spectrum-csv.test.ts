import { describe, expect, it } from 'vitest';
import { spectrumCsv } from '../../../packages/demo/src/charts/spectrum-csv.js';

describe('spectrumCsv', () => {
  it('writes a row a line under a header with units', () => {
    expect(spectrumCsv({ step: 0.5, amplitude: [1, 2] }, 'm/s²')).toBe(
      'frequency (Hz),peak amplitude (m/s²)\r\n0,1\r\n0.5,2\r\n',
    );
  });
});
