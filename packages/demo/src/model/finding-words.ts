import type { Cause } from '@sternline/core';

const CAUSES: Readonly<Record<Cause, string>> = {
  unbalance: 'Something that turns is out of balance',
  'bent-shaft': 'The shaft is bent or runs out',
  'joint-angle': 'The universal joint works at too large an angle',
  'joint-phase': 'The two joints do not cancel: yokes out of phase or angles unequal',
  misalignment: 'Motor and shaft are out of line',
  looseness: 'Something is loose',
  rubbing: 'Something rubs',
  'blade-pass': 'The propeller blades strike disturbed water',
  whirl: 'The shaft whips: it runs near a critical speed',
  'torsional-resonance': 'The line swings in twist',
  'structural-resonance': 'A part of the hull or its mounting rings at its own frequency',
  electrical: 'The hum comes from the motor’s electrics',
  unexplained: 'Something shakes that this line does not explain',
};

/**
 * A cause as a builder would say it.
 *
 * @param cause - the cause of a finding
 * @returns a clause with a capital letter and no full stop
 */
export function causeWords(cause: Cause): string {
  return CAUSES[cause];
}

/**
 * How sure a finding is, in words.
 *
 * @param confidence - 0 … 1
 * @returns an adverb or two
 */
export function confidenceWords(confidence: number): string {
  if (confidence >= 0.85) return 'almost certainly';
  if (confidence >= 0.65) return 'probably';
  if (confidence >= 0.4) return 'possibly';
  return 'a faint sign only';
}
