import type { Disc, ShaftLine } from './types.js';

/** Share of its own mass and inertia that a propeller's water adds, where the line does not say. */
const WET_FACTOR = 1.25;

/**
 * The discs of one shaft as they move in water.
 *
 * Where the line has a `propeller`, the propeller's disc carries water: `wetMassFactor` times its mass and
 * `wetInertiaFactor` times both its inertias, 1.25 each where absent. The propeller's disc is every disc of the last
 * shaft with "propeller" in its name, else the aftmost one. Without a `propeller` everything is dry.
 *
 * @see R. Woytowich, "Calculation of Propeller Shaft Whirling Frequencies", J. Ship Research 23(4), 1979, 235–241
 *   (+25 % as a rough figure)
 */
export function wetDiscs(line: ShaftLine, shaft: number): readonly Disc[] {
  const discs = line.shafts[shaft]?.discs ?? [];
  const { propeller } = line;
  if (!propeller || shaft !== line.shafts.length - 1 || discs.length === 0) return discs;
  const { wetMassFactor = WET_FACTOR, wetInertiaFactor = WET_FACTOR } = propeller;
  const named = discs.filter(({ name }) => /propeller/i.test(name));
  const aftmost = discs.reduce((last, disc) => (disc.at >= last.at ? disc : last));
  const wet = new Set(named.length > 0 ? named : [aftmost]);
  return discs.map((disc) =>
    wet.has(disc)
      ? {
          ...disc,
          mass: disc.mass * wetMassFactor,
          polarInertia: disc.polarInertia * wetInertiaFactor,
          diametralInertia: disc.diametralInertia * wetInertiaFactor,
        }
      : disc,
  );
}
