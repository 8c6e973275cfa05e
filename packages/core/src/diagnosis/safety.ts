/** Said wherever a check makes someone touch or turn the line. */
export const HANDS_OFF = 'Take the battery out before you touch the line.';
export const SPIN_GUARDED =
  'Hold the model fast, guard the propeller or take it off, keep eyes, fingers and loose clothes clear while it turns, and do not dwell at a speed that shakes.';
/** Said where a check makes someone do both. */
export const CARE = `${HANDS_OFF} ${SPIN_GUARDED}`;
