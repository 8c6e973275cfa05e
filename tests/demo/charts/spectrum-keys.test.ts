import { describe, expect, it } from 'vitest';
import { spectrumKey } from '../../../packages/demo/src/charts/spectrum-keys.js';

const bare = { shiftKey: false, ctrlKey: false, metaKey: false };

describe('spectrumKey', () => {
  it('moves with the arrows, and the view with Shift', () => {
    expect(spectrumKey({ ...bare, key: 'ArrowLeft' })).toEqual({ does: 'move', sign: -1 });
    expect(spectrumKey({ ...bare, key: 'ArrowRight', shiftKey: true })).toEqual({ does: 'pan', sign: 1 });
  });

  it("leaves Tab and the browser's own zoom alone", () => {
    expect(spectrumKey({ ...bare, key: 'Tab' })).toBeUndefined();
    expect(spectrumKey({ ...bare, key: '+', ctrlKey: true })).toBeUndefined();
  });
});
