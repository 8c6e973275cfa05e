import type { Severity } from '@sternline/core';
import type { ChannelLevels } from './analysis-types.js';
import { shortFigure } from './short-figure.js';

/** From here on more than tones and noise is in it: noise has 3. */
const KNOCKING = 5;

/**
 * How much a recording shakes and how knocking it is, in sentences.
 *
 * @param levels - of its channels, the strongest first
 * @returns none where there is no channel
 */
export function levelSentences([strongest]: readonly ChannelLevels[]): string[] {
  if (!strongest) return [];
  const { channel, rms, peak, crestFactor, kurtosis } = strongest;
  const unit = strongest.unit === 'full scale' ? 'of full scale' : strongest.unit;
  const level = `On ${channel} the level is ${shortFigure(rms)} ${unit} rms, ${shortFigure(peak)} at its highest.`;
  if (!Number.isFinite(kurtosis)) return [level];
  const figures = `Crest factor ${shortFigure(crestFactor, 2)}, kurtosis ${shortFigure(kurtosis, 2)}`;
  return [
    level,
    kurtosis > KNOCKING
      ? `${figures}: blows or bursts stand in it, as of a joint that rattles, or of a run through a resonance.`
      : `${figures}: nothing knocks (a pure tone has 1.4 and 1.5, even noise 4 to 5 and 3).`,
  ];
}

/**
 * The velocity of a recording beside the zones of the standard, in sentences, its scope last.
 *
 * @param severity - as the core gives it
 */
export function severitySentences({ velocity, channel, band, zone, limits, scope }: Severity): string[] {
  const figure = `${shortFigure(1000 * velocity, 2)} mm/s rms on ${channel}, ${shortFigure(band.from, 2)} to ${shortFigure(band.to)} Hz`;
  const [good, fair, poor] = limits.map((limit) => shortFigure(1000 * limit, 2));
  const said =
    zone === undefined
      ? `Velocity: at least ${figure}.`
      : `Velocity: ${figure}: zone ${zone} of ISO 20816-1 as drawn for machines up to 15 kW (A up to ${good ?? ''}, B to ${fair ?? ''}, C to ${poor ?? ''} mm/s).`;
  return [said, ...scope];
}

/** A table as plain text. */
export interface LevelTable {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/**
 * Levels, channel by channel.
 *
 * @param levels - the strongest first
 */
export function levelTable(levels: readonly ChannelLevels[]): LevelTable {
  const unit = levels[0]?.unit ?? '';
  const withVelocity = levels.some(({ velocity }) => velocity !== undefined);
  const band = levels.find(({ velocity }) => velocity)?.velocity?.band;
  return {
    caption: 'Levels',
    columns: [
      'Channel',
      `rms, ${unit}`,
      `Highest, ${unit}`,
      'Crest factor',
      'Kurtosis',
      ...(band ? [`Velocity, mm/s rms, ${shortFigure(band.from, 2)}–${shortFigure(band.to)} Hz`] : []),
    ],
    rows: levels.map(({ channel, rms, peak, crestFactor, kurtosis, velocity }) => [
      channel,
      shortFigure(rms),
      shortFigure(peak),
      shortFigure(crestFactor),
      shortFigure(kurtosis),
      ...(withVelocity ? [velocity ? shortFigure(1000 * velocity.rms) : '–'] : []),
    ]),
  };
}
