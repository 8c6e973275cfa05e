import { refusal } from '../internal/refuse.js';
import type { Channel, ChannelUnit, Recording } from '../recording/types.js';

/** Channels that are read as one. */
export interface ChannelGroup {
  readonly label: string;
  readonly unit: ChannelUnit;
  readonly names: readonly string[];
}

/** The channels that both recordings have, by name and unit, each alone or those of one unit together. */
export function channelGroups(
  [before, after]: readonly [Recording, Recording],
  how: 'together' | 'apart',
): ChannelGroup[] {
  const shared = before.channels.filter((channel) => after.channels.some((other) => isSame(channel, other)));
  if (shared.length === 0) {
    throw refusal(
      'compareRecordings: after',
      'a recording with a channel of the name and unit of one before',
      after.channels.map(({ name, unit }) => `${name} in ${unit}`).join(', '),
    );
  }
  if (how === 'apart') return shared.map(({ name, unit }) => ({ label: name, unit, names: [name] }));
  return [...new Set(shared.map(({ unit }) => unit))].map((unit) => {
    const names = shared.filter((channel) => channel.unit === unit).map(({ name }) => name);
    return { label: names.join(' + '), unit, names };
  });
}

function isSame(one: Channel, other: Channel): boolean {
  return one.name === other.name && one.unit === other.unit;
}
