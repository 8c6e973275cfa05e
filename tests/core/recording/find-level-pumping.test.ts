import { describe, expect, it } from 'vitest';
import { describeSampling, readWav, type Recording } from '@sternline/core';
import { createRandom, type Random } from '../../../packages/core/src/numerics/random.js';

const RATE = 8000;
const SECONDS = 14;

/** Motor hum with noise, and knocks that ring off within 30 ms or shouts of 0.2 s. */
function room(random: Random, { knocks, wander = 0 }: { knocks: number; wander?: number }): Float64Array {
  const level = 0.01 * 10 ** random.uniform();
  const hertz = 60 + 200 * random.uniform();
  const samples = Float64Array.from({ length: RATE * SECONDS }, (_, i) => {
    const swell = 10 ** ((wander * Math.sin(2 * Math.PI * 0.11 * (i / RATE) + 1)) / 20);
    const hum = Math.sin((2 * Math.PI * hertz * i) / RATE) + 0.4 * Math.sin((4 * Math.PI * hertz * i) / RATE);
    return swell * level * (hum + 0.5 * random.normal());
  });
  for (let k = 0; k < knocks; k++) {
    const start = Math.round(RATE * (1 + (k * (SECONDS - 2)) / knocks + 0.3 * random.uniform()));
    const long = random.uniform() < 0.5;
    for (let i = 0; i < (long ? 0.2 : 0.15) * RATE; i++) {
      const shape = long ? 1 : Math.exp(-i / (0.02 * RATE));
      samples[start + i]! += 0.5 * shape * random.normal();
    }
  }
  return samples;
}

/** A peak-following gain control: fast down, slow up; written for this test, after the usual diagram of one. */
function automaticGain(
  samples: Float64Array,
  { release, most }: { release: number; most: number },
): Float64Array {
  const target = 0.1;
  let follower = target / most;
  return samples.map((value) => {
    const size = Math.abs(value);
    follower =
      size > follower
        ? follower + (size - follower) / (0.01 * RATE)
        : follower * Math.exp(-1 / (release * RATE));
    return Math.max(-1, Math.min(1, value * Math.min(most, target / follower)));
  });
}

function wav(samples: Float64Array): Recording {
  const bytes = Buffer.alloc(44 + 2 * samples.length);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(36 + 2 * samples.length, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(RATE, 24);
  bytes.writeUInt32LE(2 * RATE, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(2 * samples.length, 40);
  samples.forEach((value, i) =>
    bytes.writeInt16LE(Math.round(Math.max(-1, Math.min(32767 / 32768, value)) * 32768), 44 + 2 * i),
  );
  return readWav(new Uint8Array(bytes));
}

describe('level pumping', () => {
  const seeds = Array.from({ length: 40 }, (_, seed) => seed);

  it('is found in at least nine of ten recordings with automatic gain', () => {
    const found = seeds.filter((seed) => {
      const random = createRandom(1000 + seed);
      const release = 0.4 + 0.8 * random.uniform();
      const pumping = wav(automaticGain(room(random, { knocks: 4 }), { release, most: 3 })).sampling
        .levelPumping;
      return pumping !== undefined;
    });
    expect(found.length).toBeGreaterThanOrEqual(36);
  });

  it('is claimed in none of eighty recordings without it, steady or swelling by 6 dB', () => {
    const claimed = [...seeds, ...seeds.map((seed) => seed + 40)].filter((seed) => {
      const random = createRandom(seed);
      const knocks = seed % 6;
      return (
        wav(room(random, { knocks, wander: seed % 2 === 0 ? 0 : 3 })).sampling.levelPumping !== undefined
      );
    });
    expect(claimed).toEqual([]);
  });

  it('tells how far the level fell and how long it took to come back, in figures and in words', () => {
    const release = 0.8;
    const recording = wav(automaticGain(room(createRandom(4), { knocks: 4 }), { release, most: 3 }));
    const pumping = recording.sampling.levelPumping!;
    expect(pumping.channel).toBe('sound');
    expect(pumping.pumped).toBeGreaterThanOrEqual(2);
    expect(pumping.dip).toBeGreaterThan(3);
    // The gain rises by 8.7 dB in each time of release; a dip within 20 dB is back by 63 % within twice that time.
    expect(pumping.recovery).toBeGreaterThan(0.1);
    expect(pumping.recovery).toBeLessThan(2 * release);
    expect(recording.sampling.notes.join(' ')).toContain('Automatic gain was at work on sound');
    expect(describeSampling(recording).at(-1)).toContain('so levels cannot be compared');
  });

  it('says nothing where there is silence alone', () => {
    expect(wav(new Float64Array(RATE * 4)).sampling.levelPumping).toBeUndefined();
  });
});
