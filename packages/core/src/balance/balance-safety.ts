/**
 * What must stand beside every screen that has someone put a mass on a rotor and run it. Common practice.
 *
 * @example
 * BALANCE_SAFETY.length // → 6
 */
export const BALANCE_SAFETY: readonly string[] = [
  'Hold the model fast before the battery goes in: an unbalanced line shakes a loose model off the bench.',
  'Fix the trial mass so that it cannot fly off: clamp, screw or glue it, wrap it with tape as well, and never trust tape or putty alone. Pull at it before every run.',
  'Put a guard round the propeller, and keep everyone out of its plane: what comes off flies off sideways.',
  'Take the battery out before you touch the line, every time a mass is moved.',
  'Wear eye protection; keep fingers, hair, cords and loose clothes away.',
  'Keep runs short and below the first whirl, at the same speed each time; stop at once if it shakes more than in the first run by far. Bushes and seals must not run dry for long.',
];
