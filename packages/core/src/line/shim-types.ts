/** What a dial or a feeler shows at four places of the clock, m. */
export interface ClockReadings {
  readonly top: number;
  readonly bottom: number;
  readonly port: number;
  readonly starboard: number;
}

/** Places of the motor's feet, m, counted from the reference plane towards the motor; the front feet are those by the coupling. */
export interface FeetPlaces {
  readonly front: number;
  readonly rear: number;
}

interface CommonReadings {
  readonly feet: FeetPlaces;
  /** m, the most that one reading may be off; absent is none. */
  readonly tolerance?: number;
  /** rad/s, the running speed, for a verdict; absent asks for none. */
  readonly speed?: number;
  /** m, length of the spacer of a coupling that bends at both ends of it; absent is a short coupling. */
  readonly spacer?: number;
}

/**
 * Dials on a bracket that the motor shaft carries round: one on the rim of the hub of the driven shaft, one on its
 * face towards the motor. Reference plane: where the rim dial touches. A dial counts up as its stem is pushed in.
 */
export interface RimAndFaceReadings extends CommonReadings {
  readonly kind: 'rim-and-face';
  readonly rim: ClockReadings;
  readonly face: ClockReadings;
  /** m, of the circle that the face dial runs on. */
  readonly faceDiameter: number;
  /** m, what the rim dial shows at the bottom of a straight bar with its bracket zeroed at the top, as a rule negative; absent is none. */
  readonly sag?: number;
}

/**
 * Two rim dials, each on a bracket carried round by one shaft and touching the hub of the other. Reference plane: where
 * the dial carried by the motor touches the driven shaft's hub.
 */
export interface ReverseIndicatorReadings extends CommonReadings {
  readonly kind: 'reverse-indicator';
  /** The dial carried by the motor, on the hub of the driven shaft. */
  readonly onShaft: ClockReadings;
  /** The dial carried by the driven shaft, on the hub of the motor. */
  readonly onMotor: ClockReadings;
  /** m, between the planes of both dials. */
  readonly separation: number;
  /** m, of either bracket, as for rim and face. */
  readonly sag?: number;
}

/**
 * A straight edge laid across both hubs, and feelers between their faces. Reference plane: between the faces.
 */
export interface RulerAndFeelerReadings extends CommonReadings {
  readonly kind: 'ruler-and-feeler';
  /** m, by how much the motor's hub stands out beyond the other. Absent `bottom` or `starboard`: hubs of one diameter. */
  readonly step: Pick<ClockReadings, 'top' | 'port'> & Partial<Pick<ClockReadings, 'bottom' | 'starboard'>>;
  /** m, between the faces, at their rims. */
  readonly gap: ClockReadings;
  /** m, of the circle that the feelers touch. */
  readonly faceDiameter: number;
}

export type CouplingReadings = RimAndFaceReadings | ReverseIndicatorReadings | RulerAndFeelerReadings;

/** A quantity in both planes. */
export interface InBothPlanes {
  /** Positive up. */
  readonly vertical: number;
  /** Positive to port. */
  readonly horizontal: number;
}

/** Where the motor's axis lies against the driven shaft's, and what brings it in line. */
export interface MotorShims {
  /** m, of the motor's axis from the driven shaft's, in the reference plane. */
  readonly offset: InBothPlanes;
  /** rad, of the motor's axis against the driven shaft's: positive where it rises, or goes to port, going aft. */
  readonly angularity: InBothPlanes;
  /** m, to move the feet by: raise, and to port. */
  readonly feet: { readonly front: InBothPlanes; readonly rear: InBothPlanes };
  /** The likely reach of each, from the tolerance of the readings. */
  readonly tolerance: {
    readonly offset: InBothPlanes;
    readonly angularity: InBothPlanes;
    readonly front: InBothPlanes;
    readonly rear: InBothPlanes;
  };
  /** m, the largest |top + bottom − port − starboard| of a dial: what the readings contradict themselves by. */
  readonly closure: number;
  /** What was taken for granted, in words. */
  readonly assumed: readonly string[];
  /** Where a speed is given. */
  readonly verdict?: AlignmentVerdict;
}

/** A misalignment against the limits of its speed. */
export interface AlignmentFigure {
  readonly value: number;
  readonly acceptable: number;
  readonly excellent: number;
}

export type AlignmentGrade = 'excellent' | 'acceptable' | 'outside';

export interface AlignmentVerdict {
  /** The worst of the figures. */
  readonly grade: AlignmentGrade;
  /** m: both planes together, of a short coupling. */
  readonly offset?: AlignmentFigure;
  /** rad: both planes together, of a short coupling; the gap between the faces over their diameter. */
  readonly angularity?: AlignmentFigure;
  /** rad: of a spacer coupling, the larger of the angles at its two ends. */
  readonly spacer?: AlignmentFigure;
  readonly basis: AlignmentLimits['basis'];
}

/** Limits of misalignment at one speed. */
export interface AlignmentLimits {
  /** m, of a short coupling. */
  readonly offset: { readonly acceptable: number; readonly excellent: number };
  /** rad, gap between the faces over their diameter, of a short coupling. */
  readonly angularity: { readonly acceptable: number; readonly excellent: number };
  /** rad, offset over the length of the spacer. */
  readonly spacer: { readonly acceptable: number; readonly excellent: number };
  /** m, by which a foot may stand clear before it is bolted down. */
  readonly softFoot: number;
  /** Whether the speed lies within the table, 750 to 6000 rpm; below, its first row holds; beyond, limits shrink as 1/speed. */
  readonly basis: 'table' | 'below the table' | 'beyond the table';
}
