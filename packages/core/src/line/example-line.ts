import { parseShaftLine } from './parse-shaft-line.js';
import type { ShaftLine } from './types.js';

const DEGREE = Math.PI / 180;

/**
 * The port line of the ferry *Marram*, a model 1.42 m long: one universal joint at 14°, a 5 mm stainless shaft in a 318 mm tube
 * with a bush at each end, a four-bladed 48 mm brass propeller 30 mm behind the last bush. The ferry and every figure are invented.
 *
 * @returns a checked line; the propeller's inertia is that of a brass disc of the same mass at 0.35 of its diameter
 * @example
 * jointAngles(exampleLine()) // → [0.244]
 */
export function exampleLine(): ShaftLine {
  return parseShaftLine({
    name: 'Port line, one joint, 5 mm',
    shafts: [motorShaft, propellerShaft],
    joints: [{ kind: 'universal', mass: 0.016, polarInertia: 4e-7, maxAngle: 30 * DEGREE }],
    motor: {
      speedConstant: (480 * 2 * Math.PI) / 60,
      resistance: 0.06,
      noLoadCurrent: 1.1,
      rotorInertia: 2.1e-5,
      poles: 14,
    },
    supply: { voltage: 11.1, resistance: 0.03 },
    propeller: { blades: 4, diameter: 0.048, pitch: 0.05, wetMassFactor: 1.25, wetInertiaFactor: 1.25 },
  });
}

const motorShaft = {
  name: 'motor shaft',
  length: 0.062,
  outerDiameter: 0.005,
  material: 'carbon steel',
  elevation: 0,
  plan: 0,
  supports: [
    { at: 0.004, lining: 'ball bearing' },
    { at: 0.044, lining: 'ball bearing' },
  ],
};

const propellerShaft = {
  name: 'propeller shaft',
  length: 0.376,
  outerDiameter: 0.005,
  material: 'stainless steel',
  elevation: -14 * DEGREE,
  plan: 0,
  tubeBore: 0.007,
  runout: 0.00005,
  supports: [
    { at: 0.026, length: 0.01, bore: 0.00503, lining: 'sintered bronze' },
    { at: 0.334, length: 0.01, bore: 0.00503, lining: 'sintered bronze' },
  ],
  discs: [
    {
      name: 'propeller',
      at: 0.364,
      mass: 0.038,
      polarInertia: 4.4e-6,
      diametralInertia: 2.4e-6,
      unbalance: 1.2e-6,
    },
  ],
};
