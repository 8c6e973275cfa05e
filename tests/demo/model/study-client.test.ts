import { exampleLine, criticalSpeeds } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import type { LineStudy } from '../../../packages/demo/src/model/line-study.js';
import { StudyClient } from '../../../packages/demo/src/model/study-client.js';

const line = exampleLine();

function ask(client: StudyClient, top: number): Promise<LineStudy | Error> {
  return new Promise((resolve) => {
    client.ask(line, { top, speed: 345 }, resolve);
  });
}

describe('StudyClient', () => {
  it('studies on the page where there is no worker, and the bounds hold the critical speed of the line as entered', async () => {
    const study = await ask(new StudyClient(), 900);
    if (study instanceof Error) throw study;
    const [first] = criticalSpeeds(line);
    expect(study.bounds[0]!.lower).toBeCloseTo(first!.speed, 3);
    expect(study.bounds[0]!.upper).toBeGreaterThan(study.bounds[0]!.estimate);
    expect(study.map.speeds.at(-1)).toBe(900);
    expect(study.clearance!.tubes[0]!.clearance).toBeCloseTo(0.001, 12);
  });

  it('gives a failure back as such', async () => {
    const study = await ask(new StudyClient(), -1);
    expect(study).toBeInstanceOf(Error);
  });

  it('skips what was overtaken while it worked', async () => {
    const client = new StudyClient(() => {
      throw new Error('no worker here');
    });
    const answered: number[] = [];
    const done = (top: number) => () => answered.push(top);
    client.ask(line, { top: 500, speed: 345 }, done(500));
    client.ask(line, { top: 600, speed: 345 }, done(600));
    await ask(client, 700);
    expect(answered).toEqual([500]);
  });
});
