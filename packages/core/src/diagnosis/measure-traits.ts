import type { Evidence, OrderEvidence } from './evidence.js';
import { jointsCancel } from './joints-cancel.js';
import { mainsLine } from './mains-line.js';
import { nearestCritical } from './nearest-critical.js';
import { orderEvidence } from './order-evidence.js';
import { ramp } from './ramp.js';
import { shareOf } from './share-of.js';
import { SWITCHING } from './switching.js';
import type { Traits } from './traits.js';

/** Share of a critical speed within which whirl is to be reckoned with; common practice. */
const MARGIN = 0.25;

type OrderTraits = Pick<
  Traits,
  | 'once'
  | 'twice'
  | 'fourTimes'
  | 'blade'
  | 'bladeTwice'
  | 'odd'
  | 'onceOverTwice'
  | 'onceLead'
  | 'twiceLead'
  | 'bladeLead'
  | 'oddLead'
  | 'row'
  | 'halves'
  | 'onceFolded'
  | 'twiceFolded'
  | 'bladeFolded'
>;

/** What a recording shows, for weighing. */
export function measureTraits(evidence: Evidence): Traits {
  const { noise, modulation } = evidence;
  return {
    ...orderTraits(evidence),
    ...strangerTraits(evidence),
    ...axisTraits(evidence),
    ...lineTraits(evidence),
    noise: noise.share > 0 ? ramp(Math.log10(noise.share), -1, 0.3) : 0,
    modulation: ramp(modulation.depth, 0, 1.8),
    burst: ramp(modulation.burst, 0, 1.3),
  };
}

function orderTraits(evidence: Evidence): OrderTraits {
  const blades = evidence.line?.propeller?.blades ?? 0;
  const all = evidence.readings.flatMap(({ order }) => orderEvidence(evidence, order) ?? []);
  const clear = all.filter((found) => found.clear);
  const shareAt = (order: number): number => clear.find(({ reading }) => reading.order === order)?.share ?? 0;
  const odd = clear.filter(
    ({ reading: { order } }) =>
      order >= 3 && Number.isInteger(order) && order !== blades && order !== 2 * blades,
  );
  const best = [...odd].sort((a, b) => b.share - a.share)[0];
  const lead = (order: number): number => {
    const others = all.filter(({ reading }) => reading.order !== order && reading.seen);
    return leadOf(shareAt(order), Math.max(0, ...others.map(({ share }) => share)));
  };
  const isFolded = (order: number): number =>
    Number(clear.some(({ reading }) => reading.order === order && reading.folded));
  return {
    once: level(shareAt(1)),
    twice: level(shareAt(2)),
    fourTimes: level(shareAt(4)),
    blade: blades > 1 ? level(shareAt(blades)) : 0,
    bladeTwice: blades > 1 ? level(shareAt(2 * blades)) : 0,
    odd: level(best?.share ?? 0),
    onceOverTwice: leadOf(shareAt(1), shareAt(2)),
    onceLead: lead(1),
    twiceLead: lead(2),
    bladeLead: blades > 1 ? lead(blades) : 0,
    oddLead: best === undefined ? 0 : lead(best.reading.order),
    // A channel that was cut off makes a row of orders by itself.
    row: evidence.recording.sampling.clipping.length > 0 ? 0 : rowShare(all, blades),
    halves: level(Math.max(0, shareAt(0.5), shareAt(1.5))),
    onceFolded: isFolded(1),
    twiceFolded: isFolded(2),
    bladeFolded: blades > 1 ? isFolded(blades) : 0,
  };
}

function rowShare(all: readonly OrderEvidence[], blades: number): number {
  const reachable = all.filter(
    ({ measurement: { reachable, folded }, reading: { order } }) =>
      [2, 3, 4, 5, 6].includes(order) && order !== blades && order !== 2 * blades && reachable && !folded,
  );
  if (reachable.length < 2) return 0;
  return reachable.filter(({ clear, share }) => clear && share > 0.05).length / reachable.length;
}

function strangerTraits(evidence: Evidence): Pick<Traits, 'stranger' | 'mains' | 'mainsPair'> {
  const { strangers, measured, recording } = evidence;
  const place = { sampleRate: recording.sampleRate, resolution: measured.resolution };
  const mains = strangers.filter(({ frequency }) => mainsLine(frequency, place) !== undefined);
  const own = strangers.filter((peak) => !mains.includes(peak) && peak.frequency < SWITCHING);
  const highest = (peaks: typeof strangers): number =>
    level(Math.max(0, ...peaks.map(({ amplitude, unit }) => shareOf(evidence, amplitude, unit))));
  const pairs = new Set(mains.map(({ frequency }) => mainsLine(frequency, place)));
  const paired = (pairs.has(50) && pairs.has(100)) || (pairs.has(60) && pairs.has(120));
  return { stranger: highest(own), mains: highest(mains), mainsPair: Number(paired) };
}

function axisTraits(evidence: Evidence): Pick<Traits, 'axialOnce' | 'axialTwice' | 'axisKnown'> {
  const along = (order: number): number => {
    const channels = evidence.measured.orders.find((other) => other.order === order)?.channels ?? [];
    const axial = channels.find(({ channel }) => channel === evidence.axial);
    const across = channels.filter(({ channel, unit }) => channel !== evidence.axial && unit === axial?.unit);
    const largest = Math.max(0, ...across.map(({ amplitude }) => amplitude));
    return axial === undefined || largest === 0 ? 0 : ramp(axial.amplitude / largest, 0.2, 0.67);
  };
  const known = evidence.recording.channels.some(({ name }) => name === evidence.axial);
  return known
    ? { axialOnce: along(1), axialTwice: along(2), axisKnown: 1 }
    : { axialOnce: 0, axialTwice: 0, axisKnown: 0 };
}

function lineTraits({
  line,
  speed,
}: Evidence): Pick<Traits, 'lineKnown' | 'straight' | 'cancelling' | 'twoBlades' | 'nearCritical'> {
  if (line === undefined) {
    return { lineKnown: 0, straight: 0, cancelling: 0, twoBlades: 0, nearCritical: 0 };
  }
  const joints = line.joints.filter(({ kind }) => kind === 'universal').length;
  const critical = nearestCritical(line, { speed, order: 1, whirls: ['forward'] });
  const away = critical === undefined ? Infinity : Math.abs(speed / critical.speed - 1);
  return {
    lineKnown: 1,
    straight: Number(joints === 0),
    cancelling: Number(jointsCancel(line)),
    twoBlades: Number(line.propeller?.blades === 2),
    nearCritical: 1 - ramp(away, 0.05, MARGIN),
  };
}

function level(share: number): number {
  return share > 0 ? ramp(Math.log10(share), -1.5, 0) : 0;
}

function leadOf(one: number, other: number): number {
  if (one === 0) return 0;
  return other === 0 ? 1 : ramp(Math.log10(one / other), -1, 1);
}
