import type { Whirl } from '../whirl/types.js';
import type { LineExcitation } from './excitations.js';
import { ordinal, upperFirst } from './band-words.js';
import { figure, makeStatement } from './statement.js';
import type { AvoidBand, Excitation, LineCriticalSpeed } from './types.js';

type Critical = Omit<LineCriticalSpeed, 'shape'>;

/**
 * The speeds to keep out of, one band for each mode and excitation: each critical speed with its margin either side.
 * The forward and backward criticals of one mode share a band where their margins touch.
 */
export function avoidBands(
  criticals: readonly Critical[],
  excitations: readonly LineExcitation[],
): AvoidBand[] {
  const bands = excitations.flatMap((source) => {
    const own = criticals.filter((critical) => critical.excitation === source.excitation);
    const modes = [...new Set(own.map((critical) => critical.mode))];
    return modes.flatMap((mode) =>
      bandsOfMode(
        own.filter((critical) => critical.mode === mode),
        source,
      ),
    );
  });
  return bands.sort((a, b) => a.from - b.from);
}

function bandsOfMode(criticals: readonly Critical[], source: LineExcitation): AvoidBand[] {
  const sorted = [...criticals].sort((a, b) => a.speed - b.speed);
  const groups: Critical[][] = [];
  for (const critical of sorted) {
    const last = groups.at(-1);
    const top = last?.at(-1)?.speed ?? -Infinity;
    if (last && critical.speed * (1 - source.margin) <= top * (1 + source.margin)) last.push(critical);
    else groups.push([critical]);
  }
  const apart = groups.length > 1;
  return groups.map((group) => makeBand(group, { source, whirl: apart ? group[0]?.whirl : undefined }));
}

function makeBand(
  group: readonly Critical[],
  { source, whirl }: { source: LineExcitation; whirl: Whirl | undefined },
): AvoidBand {
  const speeds = group.map((critical) => critical.speed);
  const mode = group[0]?.mode ?? 1;
  const from = Math.min(...speeds) * (1 - source.margin);
  const to = Math.max(...speeds) * (1 + source.margin);
  const name = bandName(source.excitation, { mode, order: source.order, whirl });
  const template = `${upperFirst(name)}: {from} to {to}.`;
  const figures = { from: figure('speed', from), to: figure('speed', to) };
  return {
    name,
    from,
    to,
    excitation: source.excitation,
    order: source.order,
    motion: 'whirl',
    mode,
    criticalSpeeds: speeds,
    margin: source.margin,
    ...makeStatement(template, figures),
  };
}

interface BandPlace {
  readonly mode: number;
  readonly order: number;
  readonly whirl: Whirl | undefined;
}

function bandName(excitation: Excitation, { mode, order, whirl }: BandPlace): string {
  const place = `${ordinal(mode)}${whirl ? ` ${whirl}` : ''} whirl`;
  switch (excitation) {
    case 'unbalance':
      return place;
    case 'joints':
      return `${place} driven by the joints, twice a turn`;
    case 'blades':
      return `${place} driven by the blades, ${order} times a turn`;
  }
}
