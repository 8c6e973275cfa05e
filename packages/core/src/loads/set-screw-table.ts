/** A size of set screw: m, N·m, N. */
export interface SetScrewRow {
  readonly size: number;
  readonly seatingTorque: number;
  readonly axial: number;
}

const INCH = 0.0254;
const POUND = 4.4482216;

/**
 * Cup points on a shaft of 15 HRC, holding until they have moved by 0.25 mm (0.010 in).
 *
 * #0 to #4 from https://studylib.net/doc/18241577/socket-set-screws-holding-power. (#3 and #4 by way of its torsional columns);
 * #5 to 3/8 from Shigley, Mechanical Engineering Design, 9th ed., table 7-4, from memory. Makers differ.
 */
export const SET_SCREWS: readonly SetScrewRow[] = [
  row(0.06, 1, 50),
  row(0.073, 1.8, 65),
  row(0.086, 1.8, 85),
  row(0.099, 5, 120),
  row(0.112, 5, 160),
  row(0.125, 10, 200),
  row(0.138, 10, 250),
  row(0.164, 20, 385),
  row(0.19, 36, 540),
  row(0.25, 87, 1000),
  row(0.3125, 165, 1500),
  row(0.375, 290, 2000),
];

/** N·m that metric sizes are seated with: http://www.ruland.com/ti_hardware_torque_charts_metal.asp */
export const METRIC_SEATING: readonly (readonly [size: number, torque: number])[] = [
  [0.002, 0.21],
  [0.0025, 0.57],
  [0.003, 0.92],
  [0.004, 2.2],
  [0.005, 4],
  [0.006, 7.2],
];

function row(inches: number, poundInches: number, pounds: number): SetScrewRow {
  return { size: inches * INCH, seatingTorque: poundInches * POUND * INCH, axial: pounds * POUND };
}
