/**
 * Shear coefficient κ of a round section, solid or hollow.
 *
 * κ = 6(1 + ν)(1 + b²)² / ((7 + 6ν)(1 + b²)² + (20 + 12ν) b²), with b the bore ratio and 1 + ν = E / 2G
 *
 * @param moduliRatio - E / G; Poisson's ratio follows from it, so that the two moduli cannot disagree with a third figure
 * @param bore - inner over outer diameter, 0 for a solid shaft
 * @see G. R. Cowper, "The Shear Coefficient in Timoshenko's Beam Theory", J. Applied Mechanics 33(2), 1966, 335–340
 *   (table of coefficients; formula from memory, checked against its limits 6(1+ν)/(7+6ν) and 2(1+ν)/(4+3ν))
 */
export function shearCoefficient(moduliRatio: number, bore: number): number {
  const onePlusPoisson = moduliRatio / 2;
  const wall = (1 + bore ** 2) ** 2;
  const numerator = 6 * onePlusPoisson * wall;
  return numerator / ((1 + 6 * onePlusPoisson) * wall + (8 + 12 * onePlusPoisson) * bore ** 2);
}
