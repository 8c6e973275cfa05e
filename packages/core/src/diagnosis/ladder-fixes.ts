import type { Cause } from './types.js';

/** Cheapest first; from builders' accounts. */
export const LADDER_FIXES: Readonly<Record<Cause, readonly string[]>> = {
  unbalance: [
    'Turn the propeller on its shaft and try again.',
    'Balance the propeller.',
    'Lower the top speed.',
  ],
  'bent-shaft': ['Straighten the shaft.', 'Fit a new shaft.', 'Lower the top speed.'],
  'joint-angle': ['Lower the top speed.', 'Shim the motor to halve the angle.', 'Fit two joints for one.'],
  'joint-phase': [
    'Turn the halves of the shaft between the joints until each of its yokes stands in the plane of its own joint at once.',
    'Make both angles equal within 1°.',
  ],
  misalignment: ['Shim the motor into line with a rigid sleeve.', 'Fit a new coupling bored true.'],
  looseness: ['Tighten screws and nuts, with thread lock and a flat.', 'Fit a new joint or bush.'],
  rubbing: ['Oil or grease the bushes.', 'Give clearance where a bright mark shows.', 'Align the tube.'],
  'blade-pass': ['Give the blade tips more room.', 'Fair the strut.', 'Fit a propeller with more blades.'],
  whirl: ['Lower the top speed.', 'Shorten the overhang.', 'Add a middle bush.', 'Fit a thicker shaft.'],
  'torsional-resonance': [
    'Stay out of the band.',
    'Make the joint angle smaller.',
    'Fit a lighter propeller.',
  ],
  'structural-resonance': ['Damp or stiffen the part that rings.', 'Mount the motor softly.'],
  electrical: ['Nothing on the shaft line: move the phone or the charger away, or look at the controller.'],
  unexplained: ['Take one part off at a time and record each step.'],
};
