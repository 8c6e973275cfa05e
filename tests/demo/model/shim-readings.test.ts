import { describe, expect, it } from 'vitest';
import { shimGroups, shimsFrom } from '../../../packages/demo/src/model/shim-readings.js';
import type { ShimMethod } from '../../../packages/demo/src/model/measures.js';

const SPEED = 345;
const FEET = { 'feet.front': 0.05, 'feet.rear': 0.09 };

describe('shimsFrom', () => {
  it('lowers a motor that stands 0.3 mm high and level by 0.3 mm at every foot', () => {
    const values = {
      ...FEET,
      'step.top': 0.0003,
      'step.port': 0,
      'gap.top': 0.001,
      'gap.bottom': 0.001,
      'gap.port': 0.001,
      'gap.starboard': 0.001,
      faceDiameter: 0.02,
    };
    const outcome = shimsFrom({ method: 'ruler-and-feeler', values }, SPEED);
    expect(outcome.kind).toBe('shims');
    if (outcome.kind !== 'shims') return;
    expect(outcome.shims.feet.front.vertical).toBeCloseTo(-0.0003, 12);
    expect(outcome.shims.feet.rear.vertical).toBeCloseTo(-0.0003, 12);
    expect(outcome.shims.verdict?.grade).toBe('outside');
  });

  it.each(['rim-and-face', 'reverse-indicator', 'ruler-and-feeler'] as ShimMethod[])(
    'asks for what %s needs and nothing it does not use, then answers',
    (method) => {
      const none = shimsFrom({ method, values: {} }, SPEED);
      expect(none.kind === 'missing' && none.some).toBe(false);
      const asked = none.kind === 'missing' ? none.missing.map(({ path }) => [path, 0.01] as const) : [];
      const values = { ...Object.fromEntries(asked), ...FEET };
      expect(shimsFrom({ method, values }, SPEED).kind).toBe('shims');
    },
  );

  it('refuses far feet that are nearer than the near ones', () => {
    const fields = shimGroups('rim-and-face').flatMap((group) =>
      group.fields.map(({ path }) => [path, 0.01] as const),
    );
    const values = { ...Object.fromEntries(fields), 'feet.front': 0.09, 'feet.rear': 0.05 };
    expect(shimsFrom({ method: 'rim-and-face', values }, SPEED)).toEqual({
      kind: 'problem',
      sentence: 'The far feet must be farther from the coupling than the feet by it.',
    });
  });
});
