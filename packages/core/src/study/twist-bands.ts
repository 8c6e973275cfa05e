import type { ShaftLine } from '../line/types.js';
import { torsionalResponse } from '../twist/torsional-response.js';
import type { TorsionalCritical } from '../twist/types.js';
import { ordinal, upperFirst } from './band-words.js';
import { figure, makeStatement } from './statement.js';
import type { AvoidBand, Excitation } from './types.js';

/** N·m at a speed in rad/s. */
export type TorqueLaw = (speed: number) => number;

interface TwistTask {
  readonly line: ShaftLine;
  readonly criticals: readonly TorsionalCritical[];
  readonly torque: TorqueLaw;
  readonly margin: number;
  /** rad/s, bands that begin above this are left out. */
  readonly reach: number;
}

/**
 * Bands about the torsional resonances that matter: those at which the torque in a joint or a shaft would swing past its mean, so that
 * the drive backs off and slams twice a turn or oftener.
 */
export function twistBands({ line, criticals, torque, margin, reach }: TwistTask): AvoidBand[] {
  const near = criticals.filter(({ speed }) => speed * (1 - margin) <= reach);
  return mergeSources(near)
    .filter(({ speed }) => {
      const mean = torque(speed);
      const { jointSwing, shaftSwing } = torsionalResponse(line, { speed, torque: mean });
      return [...jointSwing, ...shaftSwing].some((swing) => swing > mean);
    })
    .map((critical) => makeBand(critical, margin));
}

interface Driven extends TorsionalCritical {
  readonly drivers: readonly Excitation[];
}

/** Joints and blades that push equally often share a resonance. */
function mergeSources(criticals: readonly TorsionalCritical[]): Driven[] {
  const merged = new Map<string, Driven>();
  for (const critical of criticals) {
    const key = `${critical.order} ${critical.mode}`;
    const driver: Excitation = critical.source === 'blades' ? 'blades' : 'joints';
    merged.set(key, { ...critical, drivers: [...(merged.get(key)?.drivers ?? []), driver] });
  }
  return [...merged.values()];
}

function makeBand({ order, drivers, mode, speed }: Driven, margin: number): AvoidBand {
  const excitation = drivers.includes('blades') ? 'blades' : 'joints';
  const times = order === 2 ? 'twice' : `${order} times`;
  const name = `${ordinal(mode)} torsional resonance driven by the ${drivers.join(' and ')}, ${times} a turn`;
  const from = speed * (1 - margin);
  const to = speed * (1 + margin);
  const figures = { from: figure('speed', from), to: figure('speed', to) };
  return {
    name,
    from,
    to,
    motion: 'twist',
    excitation,
    order,
    mode,
    criticalSpeeds: [speed],
    margin,
    ...makeStatement(`${upperFirst(name)}: {from} to {to}.`, figures),
  };
}
