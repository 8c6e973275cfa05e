import { jointAngles } from '../line/joint-angles.js';
import { shaftDirection } from '../line/shaft-direction.js';
import type { Shaft, ShaftLine } from '../line/types.js';
import { PLAIN_PIN_LIMIT } from '../motion/plain-pin-limit.js';
import { costsOf, type LineChange } from './line-change.js';
import { figure, makeStatement } from './statement.js';
import type { RemedyCosts } from './remedy-types.js';

const DEGREE = Math.PI / 180;
/** rad; what a motor on its bed can be brought to. */
const LEAST = 0.5 * DEGREE;
/** rad of turning that washers under the feet do, and that wedges do; beyond, the bed is made new. Common practice. */
const WASHERS = 3 * DEGREE;
const WEDGES = 8 * DEGREE;
/** m, the distance of feet that the height of a shim is told for. */
const FEET = 0.1;

/** The motor turned towards the shaft behind the first universal joint: half the angle, and what plain pins bear at the speed. */
export function shimChanges(line: ShaftLine, { speed }: { readonly speed: number }): LineChange[] {
  const joint = line.joints.findIndex(({ kind }) => kind !== 'rigid');
  if (line.joints[joint]?.kind !== 'universal') return [];
  const present = jointAngles(line)[joint] ?? 0;
  const pins = PLAIN_PIN_LIMIT / speed;
  const targets = [
    present / 2,
    ...(pins < 0.9 * present && Math.abs(pins - present / 2) > LEAST ? [pins] : []),
  ];
  return targets
    .filter((angle) => angle >= LEAST && present - angle >= LEAST)
    .map((angle) => ({
      kind: 'shim',
      heading: makeStatement('Motor shimmed to {angle} at the joint in place of {present}', {
        angle: figure('angle', angle),
        present: figure('angle', present),
      }),
      apply: (one) => turned(one, joint, 1 - angle / present),
      costs: shimCosts(present - angle),
    }));
}

function shimCosts(turn: number): RemedyCosts {
  const figures = {
    turn: figure('angle', turn),
    shim: figure('length', FEET * Math.tan(turn)),
    feet: figure('length', FEET),
  };
  const told = 'motor turned by {turn} about the joint: {shim} of shim for {feet} between its feet';
  if (turn <= WASHERS)
    return costsOf({ work: 2, money: 1, destructive: 'no', takes: [makeStatement(told, figures)], buy: [] });
  if (turn <= WEDGES)
    return costsOf({
      work: 3,
      money: 1,
      destructive: 'reversible',
      takes: [makeStatement(`${told}, as wedges`, figures)],
      buy: [],
    });
  return costsOf({
    work: 4,
    money: 2,
    destructive: 'cutting',
    takes: [makeStatement(`${told}, which takes a new bed`, figures)],
    buy: [],
  });
}

/** All pieces ahead of the joint turned by a share of the angle towards the shaft behind it. */
function turned(line: ShaftLine, joint: number, share: number): ShaftLine {
  const [from, to] = [line.shafts[joint], line.shafts[joint + 1]];
  if (!from || !to) return line;
  const direction = between(from, to, share);
  return {
    ...line,
    shafts: line.shafts.map((shaft, i) => (i <= joint ? { ...shaft, ...direction } : shaft)),
  };
}

/** On the great circle from one direction to the other. */
function between(from: Shaft, to: Shaft, share: number): Pick<Shaft, 'elevation' | 'plan'> {
  const [u, v] = [shaftDirection(from), shaftDirection(to)];
  const angle = Math.acos(Math.min(1, Math.max(-1, u[0] * v[0] + u[1] * v[1] + u[2] * v[2])));
  const [a, b] = [Math.sin((1 - share) * angle), Math.sin(share * angle)];
  const [x, y, z] = [a * u[0] + b * v[0], a * u[1] + b * v[1], a * u[2] + b * v[2]];
  return { elevation: Math.atan2(z, Math.hypot(x, y)), plan: Math.atan2(y, x) };
}
