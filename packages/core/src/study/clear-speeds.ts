import type { Assessment, AvoidBand } from './types.js';
import { firstWhirl } from './band-reasons.js';

/** rad/s; a speed is told to ten turns a minute. */
const TEN_RPM = Math.PI / 3;
/** Furthest from the wanted speed, as a share of it; our choice. */
const FURTHEST = 0.5;
/** Half a margin beside a band is near it, as in the verdict. */
const NEAR = 0.5;

/** Speeds below and above the wanted one that are near no band, nearest first; what else holds there is not looked at. */
export function clearSpeeds({ speed, avoidBands, drive }: Assessment): { below: number[]; above: number[] } {
  const zones = avoidBands.map(zone);
  const first = firstWhirl(avoidBands);
  const top = Math.min(
    drive?.fullThrottle?.speed ?? Infinity,
    first ? zone(first).from : Infinity,
    (1 + FURTHEST) * speed,
  );
  const free = (one: number): boolean =>
    one > (1 - FURTHEST) * speed && one < top && zones.every(({ from, to }) => one < from || one > to);
  const edges = [speed, ...zones.flatMap(({ from, to }) => [from, to])];
  const marks = edges.flatMap((edge) => [
    Math.ceil(edge / TEN_RPM - 1) * TEN_RPM,
    Math.floor(edge / TEN_RPM + 1) * TEN_RPM,
  ]);
  const found = [...new Set(marks)].filter(free).sort((a, b) => Math.abs(a - speed) - Math.abs(b - speed));
  return { below: found.filter((one) => one < speed), above: found.filter((one) => one > speed) };
}

function zone({ from, to, margin }: AvoidBand): { readonly from: number; readonly to: number } {
  const reach = (NEAR * margin) / (1 - margin);
  return { from: from * (1 - reach), to: to * (1 + reach) };
}
