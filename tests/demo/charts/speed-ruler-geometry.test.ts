import { describe, expect, it } from 'vitest';
import {
  layoutRuler,
  niceTop,
  type RulerBand,
} from '../../../packages/demo/src/charts/speed-ruler-geometry.js';

const band = (from: number, to: number, order: number): RulerBand => ({
  from,
  to,
  order,
  label: `${order}× somewhere`,
  marks: [(from + to) / 2],
});
const input = {
  bands: [band(3000, 4000, 2), band(5000, 7000, 1), band(3200, 3600, 4), band(9000, 9500, 1)],
  levels: [
    { speed: 2000, order: 1, amplitude: 1, unit: 'm/s²', seen: true },
    { speed: 2500, order: 1, amplitude: 4, unit: 'm/s²', seen: true },
    { speed: 2500, order: 3, amplitude: 0.1, unit: 'm/s²', seen: false },
    { speed: 9000, order: 1, amplitude: 1, unit: 'm/s²', seen: true },
  ],
  top: 8000,
  wanted: 3300,
  limit: 5000,
};
const ruler = layoutRuler(input, { width: 1000, height: 120 });

describe('layoutRuler', () => {
  it('is linear from rest to its top', () => {
    expect(ruler.x(4000) - ruler.x(0)).toBeCloseTo((ruler.x(8000) - ruler.x(0)) / 2, 9);
    expect(ruler.speed(ruler.wanted)).toBeCloseTo(3300, 9);
    expect(ruler.limit).toBeCloseTo(ruler.x(5000), 9);
  });

  it('has one lane for each order that a band or a level that was seen has', () => {
    expect(ruler.lanes.map(({ order }) => order)).toEqual([1, 2, 4]);
  });

  it('draws the bands that begin on the axis, each in its lane, as wide as they are', () => {
    expect(ruler.bands).toHaveLength(3);
    for (const drawn of ruler.bands) {
      const lane = ruler.lanes.find(({ order }) => order === drawn.order)!;
      expect(drawn.width).toBeCloseTo(ruler.x(drawn.to) - ruler.x(drawn.from), 9);
      expect(drawn.y).toBeGreaterThanOrEqual(lane.y);
      expect(drawn.y + drawn.height).toBeLessThanOrEqual(lane.y + lane.height);
    }
  });

  it('draws the levels on the axis, the larger the stronger', () => {
    expect(ruler.levels.map(({ speed }) => speed)).toEqual([2000, 2500]);
    expect(ruler.levels[1]!.radius).toBeGreaterThan(ruler.levels[0]!.radius);
  });

  it('says when the limit lies beyond the axis', () => {
    const beyond = layoutRuler({ ...input, limit: 9000 }, { width: 1000, height: 120 });
    expect(beyond.limitBeyond).toBe(true);
    expect(beyond.limit).toBeCloseTo(beyond.x(8000), 9);
    expect(ruler.limitBeyond).toBe(false);
  });

  it('lets no name of a lane cover another name or a neighbouring band', () => {
    const crowded = layoutRuler(
      { ...input, bands: [band(1000, 1500, 4), band(2000, 2600, 4), band(2700, 2750, 4)] },
      { width: 360, height: 120 },
    );
    const spans = crowded.bands.flatMap(({ name }) =>
      name ? [{ from: name.x, to: name.x + name.text.length * 6 }] : [],
    );
    spans.forEach((one, index) => {
      for (const other of spans.slice(index + 1))
        expect(one.to <= other.from || other.to <= one.from).toBe(true);
    });
  });
});

describe('niceTop', () => {
  it('is round and not below', () => {
    expect(niceTop(5328)).toBe(5500);
    expect(niceTop(10_000)).toBe(10_000);
  });
});
