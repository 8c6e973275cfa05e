import { describe, expect, it } from 'vitest';
import { diagnose, parseShaftLine, type Finding } from '@sternline/core';
import { LADDER_FIXES } from '../../../packages/core/src/diagnosis/ladder-fixes.js';
import { makeRecording } from '../../support/recordings.js';

const DEGREE = Math.PI / 180;
const shaft = { length: 0.1, outerDiameter: 0.005, material: 'stainless steel 304' };
const held = [{ at: 0.01 }, { at: 0.09 }];

function jointPhase(yokeTwist: number, last: { elevation?: number; plan?: number }): Finding {
  const line = parseShaftLine({
    shafts: [
      { ...shaft, supports: held },
      { ...shaft, name: 'middle shaft', elevation: 10 * DEGREE, yokeTwist },
      { ...shaft, ...last, supports: held },
    ],
    joints: [{ kind: 'universal' }, { kind: 'universal' }],
  });
  const components = [{ amplitude: 1, frequency: 60 }];
  const recording = makeRecording({
    sampleRate: 800,
    seconds: 6,
    channels: [{ components }],
    noise: 0.1,
    seed: 2,
  });
  const { findings } = diagnose({ recording, speed: 2 * Math.PI * 30, line });
  return findings.find(({ cause }) => cause === 'joint-phase')!;
}

describe('joint phase', () => {
  it('turns by what the bends of the line ask for, where they share no plane', () => {
    // derived: equal bends of 10°, up and then to port, stand a quarter turn apart less the lean of the frame, as in yokePhase
    const found = jointPhase(0, { elevation: 10 * DEGREE, plan: 10.156 * DEGREE });
    expect(found.nextCheck).toContain(
      'turn the propeller-end half of the middle shaft 89° clockwise, seen looking aft from the motor',
    );
    expect(found.nextCheck).not.toContain('in one plane');
    expect(found.evidence.join(' ')).toMatch(/leave 6\.1 % of fluctuation, twice a turn/);
    expect(found.rivals[0]!.why).not.toContain('cancel');
  });

  it('says that joints cancel only where they do', () => {
    const found = jointPhase(0, {});
    expect(found.evidence.join(' ')).toContain('As described, the 2 joints cancel');
    expect(found.rivals[0]!.why).toContain('The angles as described cancel');
    expect(found.nextCheck).toContain('each in the plane of its own joint');
    expect(found.evidence.join(' ')).not.toContain('more than a line');
  });

  it('without a line, each yoke in the plane of its own joint', () => {
    expect(LADDER_FIXES['joint-phase'][0]).toContain(
      'each of its yokes stands in the plane of its own joint',
    );
  });
});
