/**
 * What a recording shows, each from 0 to 1, for weighing causes. A level is where the amplitude stands between 3 % of the
 * strongest line of its unit (0) and that line itself (1), on a logarithmic scale; a lead is where the ratio of two
 * amplitudes stands between a tenth (0) and ten times (1).
 */
export interface Traits {
  /** Levels of orders 1, 2, 4 and the blade order; 0 where not seen clear of others. */
  readonly once: number;
  readonly twice: number;
  readonly fourTimes: number;
  readonly blade: number;
  /** Level of twice the blade order. */
  readonly bladeTwice: number;
  /** Level of the strongest whole order from 3 that is no blade order. */
  readonly odd: number;
  /** Lead of order 1 over 2, and of orders 1, 2 and the blade order over the strongest other order. */
  readonly onceOverTwice: number;
  readonly onceLead: number;
  readonly twiceLead: number;
  readonly bladeLead: number;
  readonly oddLead: number;
  /** Share of whole orders 2 to 6 within reach, without blade orders, at 5 % of the strongest line or more. */
  readonly row: number;
  /** Level of the strongest half order. */
  readonly halves: number;
  /** Level of the strongest line that is no multiple of shaft speed: of its own, and on a mains frequency. */
  readonly stranger: number;
  readonly mains: number;
  /** Two lines on multiples of one mains frequency. */
  readonly mainsPair: number;
  /** Noise against the strongest line, from a tenth (0) to twice (1), on a logarithmic scale. */
  readonly noise: number;
  /** Depth to which the noise swells once a turn, 1 at 1.8 or more, and twice a turn, 1 at 1.3 or more. */
  readonly modulation: number;
  readonly burst: number;
  /** Order 1 along the shaft over order 1 across it, from a fifth (0) to two thirds (1); 0 where the axes are not known. */
  readonly axialOnce: number;
  readonly axialTwice: number;
  /** 1 where it holds, else 0. */
  readonly axisKnown: number;
  readonly lineKnown: number;
  /** A line without a universal joint; one whose joints, as described, cancel; one with two blades. */
  readonly straight: number;
  readonly cancelling: number;
  readonly twoBlades: number;
  /** Nearness of the speed to a predicted critical speed of order 1: 0 at the margin, 1 within 5 %. */
  readonly nearCritical: number;
  /** Orders 1, 2 or the blade order beyond half the sampling rate. */
  readonly onceFolded: number;
  readonly twiceFolded: number;
  readonly bladeFolded: number;
}
