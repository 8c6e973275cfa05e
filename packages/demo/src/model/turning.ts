import {
  chatterSpeed,
  propellerTorque,
  shaftDirection,
  type Chatter,
  type Medium,
  type ShaftLine,
  type Vector3,
} from '@sternline/core';

/** N·m that bushes and seal of a small line take, where it was not measured. A guess: 40 g on an arm of 10 mm. */
export const USUAL_FRICTION = 0.004;

/** Directions, twists and kinds, as the yokes are drawn from. */
export function yokeLine(line: ShaftLine): {
  readonly shafts: readonly Vector3[];
  readonly twists: readonly number[];
  readonly universal: readonly boolean[];
} {
  return {
    shafts: line.shafts.map(shaftDirection),
    twists: line.shafts.map(({ yokeTwist }) => yokeTwist),
    universal: line.joints.map(({ kind }) => kind === 'universal'),
  };
}

/** When one joint rattles, dry and in water. */
export interface JointChatter {
  readonly joint: number;
  readonly dry: Chatter;
  /** Absent where the propeller's torque is not known. */
  readonly wet?: Chatter;
}

/**
 * When each universal joint rattles.
 *
 * @param line - a checked line
 * @param conditions - `speed`, rad/s, at which the propeller's torque is taken; `friction`, N·m, of bushes and seal
 */
export function jointChatters(
  line: ShaftLine,
  { speed, friction }: { readonly speed: number; readonly friction: number },
): JointChatter[] {
  const coefficient = waterCoefficient(line, speed);
  return line.joints.flatMap(({ kind }, joint) => {
    if (kind !== 'universal') return [];
    const chatter = (medium: Medium, more: { coefficient?: number }) =>
      chatterSpeed(line, { joint, torque: { constant: friction, ...more }, medium });
    const dry = chatter('air', {});
    return [{ joint, dry, ...(coefficient === undefined ? {} : { wet: chatter('water', { coefficient }) }) }];
  });
}

/** N·m·s² of the propeller in water: its torque grows with the square of the speed. */
function waterCoefficient(line: ShaftLine, speed: number): number | undefined {
  if (!line.propeller) return undefined;
  try {
    return propellerTorque(line, { speed }) / speed ** 2;
  } catch {
    return undefined;
  }
}
