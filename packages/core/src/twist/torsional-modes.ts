import { checkWhole } from '../internal/checks.js';
import type { ShaftLine } from '../line/types.js';
import { buildTwistModel, type TwistModel } from './build-twist-model.js';
import { chainMatrix } from './chain-matrix.js';
import { modeVector } from './mode-vector.js';
import { modesBelow } from './modes-below.js';
import type { LinePlace, TorsionalMode, TorsionalShape } from './types.js';

const MOST_MODES = 50;
/** The turning of the whole line is the lowest mode, of frequency 0. */
const RIGID = 1;
/** Bisection ends at this relative width. */
const WIDTH = 1e-12;
/** Places on each bar at which a shape is told. */
const PIECES = 8;

/**
 * Torsional modes of a line: motor rotor, shafts, joints and propeller with its water, free to turn as a whole.
 *
 * Bars with their own inertia, solved exactly: det D(ω) = 0. The turning of the whole line, ω = 0, is the rigid mode and is left out.
 *
 * @param line - a checked line
 * @param options - `count`, 1 to 50, default 3
 * @returns the lowest modes, ascending, none missed (they are counted): frequency in rad/s, shape over the line, and the places that stand still
 * @throws RangeError for a count out of its domain
 * @remarks The rotor sits at the motor end of the first shaft. A universal joint couples its shafts in twist one to one: its
 *   ratio departs from 1 by tan²β at most, which is left out here and is what {@link torsionalResponse} drives the line
 *   with. A joint without a `torsionalStiffness` is rigid in twist. The propeller's disc carries water: its polar inertia
 *   times `wetInertiaFactor`, 1.25 if absent.
 * @example
 * const [first] = torsionalModes(exampleLine());
 * first.frequency / (2 * Math.PI) // → 253 Hz
 * first.nodes.length // → 1
 * @see W. T. Thomson, "Theory of Vibration with Applications", §12.4 (Holzer's method) and §8.3 (bars in torsion)
 */
export function torsionalModes(
  line: ShaftLine,
  { count = 3 }: { readonly count?: number } = {},
): TorsionalMode[] {
  checkWhole('torsionalModes: count', count, [1, MOST_MODES]);
  const guess = barFrequency(line, count);
  const model = buildTwistModel(line, { frequency: guess });
  const modes: TorsionalMode[] = [];
  let above = 0;
  for (let number = 1; number <= count; number++) {
    above = nextFrequency(model, { number: RIGID + number, above, guess });
    modes.push(makeMode(model, above));
  }
  return modes;
}

/** Frequency of a bare bar that twists `count` half waves; whatever turns with it lowers that. */
function barFrequency({ shafts }: ShaftLine, count: number): number {
  const time = shafts.reduce(
    (sum, { length, material }) => sum + length * Math.sqrt(material.density / material.shearModulus),
    0,
  );
  return (1.05 * count * Math.PI) / time;
}

/** The frequency that has `number` − 1 modes below it. */
function nextFrequency(
  model: TwistModel,
  { number, above, guess }: { readonly number: number; readonly above: number; readonly guess: number },
): number {
  let low = above;
  let high = Math.max(guess, 2 * above);
  while (modesBelow(model, high) < number) {
    low = high;
    high *= 2;
  }
  while (high - low > WIDTH * high) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (modesBelow(model, middle) < number) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function makeMode(model: TwistModel, frequency: number): TorsionalMode {
  const shape = unroll(model, { frequency, vector: modeVector(chainMatrix(model, frequency)) });
  return { frequency, shape, nodes: standingPlaces(shape) };
}

/** Between its ends a bar swings as [θ₁ sin(x − ξ) + θ₂ sin ξ] / sin x. */
function unroll(
  { places, freedom, time }: TwistModel,
  { frequency, vector }: { readonly frequency: number; readonly vector: Float64Array },
): TorsionalShape {
  const shaft: number[] = [];
  const at: number[] = [];
  const station: number[] = [];
  const angle: number[] = [];
  for (let node = 0; node < time.length; node++) {
    if (places.shaft[node] !== places.shaft[node + 1]) continue;
    const phase = frequency * (time[node] ?? 0);
    const length = (places.at[node + 1] ?? 0) - (places.at[node] ?? 0);
    const from = (vector[freedom[node] ?? 0] ?? 0) / Math.sin(phase);
    const to = (vector[freedom[node + 1] ?? 0] ?? 0) / Math.sin(phase);
    const last = places.shaft[node + 2] === places.shaft[node] ? PIECES - 1 : PIECES;
    for (let piece = 0; piece <= last; piece++) {
      const share = piece / PIECES;
      shaft.push(places.shaft[node] ?? 0);
      at.push((places.at[node] ?? 0) + share * length);
      station.push((places.station[node] ?? 0) + share * length);
      angle.push(from * Math.sin((1 - share) * phase) + to * Math.sin(share * phase));
    }
  }
  const largest = angle.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0);
  return {
    shaft: Int32Array.from(shaft),
    at: Float64Array.from(at),
    station: Float64Array.from(station),
    angle: Float64Array.from(angle, (value) => value / largest),
  };
}

function standingPlaces({ shaft, at, station, angle }: TorsionalShape): LinePlace[] {
  const found: LinePlace[] = [];
  for (let i = 0; i + 1 < angle.length; i++) {
    const here = angle[i] ?? 0;
    const next = angle[i + 1] ?? 0;
    const crosses = here * next < 0 || (next === 0 && here !== 0);
    if (!crosses) continue;
    const share = shaft[i] === shaft[i + 1] ? here / (here - next) : 0;
    const along = share * ((at[i + 1] ?? 0) - (at[i] ?? 0));
    found.push({ shaft: shaft[i] ?? 0, at: (at[i] ?? 0) + along, station: (station[i] ?? 0) + along });
  }
  return found;
}
