import { describe, expect, it } from 'vitest';
import { layoutMode } from '../../../packages/demo/src/charts/mode-geometry.js';

const count = 41;
const station = Array.from({ length: count }, (_, index) => (0.4 * index) / (count - 1));
const displacement = station.map((place) => -0.5 * Math.sin((Math.PI * place) / 0.4));
const figure = layoutMode(
  {
    shaft: station.map(() => 0),
    station,
    displacement,
    marks: [
      { kind: 'support', name: 'Bush 1', short: '1', station: 0 },
      { kind: 'support', name: 'Bush 2', short: '2', station: 0.4 },
      { kind: 'disc', name: 'Propeller', short: '3', station: 0.39 },
    ],
  },
  { width: 600, height: 230 },
);

describe('layoutMode', () => {
  it('draws the largest movement as far as there is room, wherever its sign', () => {
    expect(figure.largest.station).toBeCloseTo(0.2, 12);
    expect(figure.largest.x).toBeCloseTo(300, 9);
    expect(figure.largest.y).toBeGreaterThan(figure.axis);
  });

  it('puts a mark of a resting place on the axis, and others on the curve', () => {
    const [first, propeller] = figure.marks;
    expect(first!.y).toBeCloseTo(figure.axis, 9);
    expect(propeller!.name).toBe('Propeller');
    expect(propeller!.y).toBeGreaterThan(figure.axis);
  });

  it('puts names that would touch into different rows', () => {
    const [, propeller, second] = figure.marks;
    expect(propeller!.labelRow).not.toBe(second!.labelRow);
  });

  it('names marks by their numbers where there is little room', () => {
    const narrow = layoutMode(
      {
        shaft: station.map(() => 0),
        station,
        displacement,
        marks: [{ kind: 'support', name: 'Bush 1', short: '6', station: 0 }],
      },
      { width: 340, height: 230 },
    );
    expect(narrow.marks.map(({ name }) => name)).toEqual(['6']);
    expect(figure.marks[0]!.name).toBe('Bush 1');
  });

  it('breaks the curve where one shaft ends and the next begins', () => {
    const hinged = layoutMode(
      { shaft: station.map((_, index) => (index < 20 ? 0 : 1)), station, displacement, marks: [] },
      { width: 600, height: 230 },
    );
    expect(hinged.path.match(/M/g)).toHaveLength(2);
    expect(figure.path.match(/M/g)).toHaveLength(1);
  });
});
