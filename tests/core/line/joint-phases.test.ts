import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equivalentJoint } from '@sternline/core';
import { jointPhases } from '../../../packages/core/src/line/joint-phases.js';
import { lineOf as bentLine } from './line-of.js';

describe('jointPhases', () => {
  it('add up to the equivalent joint of the whole chain at small angles', () => {
    const turn = fc.record({
      elevation: fc.double({ min: -0.03, max: 0.03, noNaN: true }),
      plan: fc.double({ min: -0.03, max: 0.03, noNaN: true }),
      yokeTwist: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(turn, { minLength: 2, maxLength: 5 }), (turns) => {
        const line = bentLine(turns);
        let real = 0;
        let imaginary = 0;
        for (const joint of jointPhases(line)) {
          const { angle, phase } = joint!;
          const amplitude = Math.tan(angle / 2) ** 2;
          real += amplitude * Math.cos(2 * phase);
          imaginary += amplitude * Math.sin(2 * phase);
        }
        const { angle, phase } = equivalentJoint(line);
        const whole = Math.tan(angle / 2) ** 2;
        // what is left is of order k², and k is below (0.12/2)² here
        expect(Math.abs(real - whole * Math.cos(2 * phase))).toBeLessThan(1e-5);
        expect(Math.abs(imaginary + whole * Math.sin(2 * phase))).toBeLessThan(1e-5);
      }),
    );
  });

  it('are none of a joint that does not bend as a hinge', () => {
    const kinds = ['rigid', 'flexible', 'universal'] as const;
    const line = bentLine([{}, {}, { elevation: 0.1 }, { elevation: 0.2 }], kinds);
    const [first, second, third] = jointPhases(line);
    expect(first).toBeUndefined();
    expect(second).toBeUndefined();
    expect(third!.angle).toBeCloseTo(0.1, 12);
  });
});
