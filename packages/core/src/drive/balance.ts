import { bracketedRoot } from '../numerics/bracketed-root.js';
import type { Drive } from './drive-of.js';
import type { PropellerLaw } from './propeller-law.js';
import type { RunningPoint } from './types.js';

/** The running point of one drive, its propeller's law already known. */
export function balance(
  drive: Drive,
  { throttle, law }: { throttle: number; law: PropellerLaw },
): RunningPoint {
  const { motor, supply } = drive;
  const resistance = motor.resistance + throttle ** 2 * supply.resistance;
  const unloaded = motor.speedConstant * (throttle * supply.voltage - motor.noLoadCurrent * resistance);
  const speed =
    unloaded > 0 ? loadedSpeed(law, { unloaded, loss: motor.speedConstant ** 2 * resistance }) : 0;
  const torque = speed > 0 ? law.torque(speed) : 0;
  const current =
    speed > 0
      ? motor.noLoadCurrent + motor.speedConstant * torque
      : throttle === 0
        ? 0
        : (throttle * supply.voltage) / resistance;
  return figures(drive, { throttle, law, speed, torque, current });
}

/** ω + loss · Q(ω) = ω₀ */
function loadedSpeed(
  { squareLaw, torque }: PropellerLaw,
  { unloaded, loss }: { readonly unloaded: number; readonly loss: number },
): number {
  if (squareLaw !== undefined) return (2 * unloaded) / (1 + Math.sqrt(1 + 4 * loss * squareLaw * unloaded));
  return bracketedRoot((speed) => speed + (speed > 0 ? loss * torque(speed) : 0) - unloaded, [0, unloaded]);
}

interface Solved {
  readonly throttle: number;
  readonly law: PropellerLaw;
  readonly speed: number;
  readonly torque: number;
  readonly current: number;
}

function figures({ motor, supply }: Drive, { throttle, law, speed, torque, current }: Solved): RunningPoint {
  const supplyCurrent = throttle * current;
  const voltage = throttle * (supply.voltage - supplyCurrent * supply.resistance);
  const powerIn = voltage * current;
  const powerOut = torque * speed;
  const copper = current ** 2 * motor.resistance;
  return {
    throttle,
    speed,
    voltage,
    current,
    supplyCurrent,
    torque,
    powerIn,
    powerOut,
    motorHeat: copper + (motor.noLoadCurrent * speed) / motor.speedConstant,
    supplyHeat: supplyCurrent ** 2 * supply.resistance,
    efficiency: powerIn > 0 ? powerOut / powerIn : 0,
    propeller: law.state(speed),
  };
}
