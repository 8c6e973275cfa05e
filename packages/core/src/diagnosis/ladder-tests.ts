import { CAUSE_BEHAVIOUR } from './cause-behaviour.js';
import type { LadderOutcome, LadderTest } from './ladder-types.js';
import { CARE, HANDS_OFF, SPIN_GUARDED } from './safety.js';
import type { Cause } from './types.js';

/** One rung: what it takes, and how likely each outcome is under each cause. */
export interface LadderRung {
  readonly instruction: string;
  readonly minutes: number;
  readonly tools: readonly string[];
  readonly caution: string;
  readonly recordable: boolean;
  readonly outcomes: readonly { readonly outcome: LadderOutcome; readonly means: string }[];
  /** In the order of `outcomes`; summing to 1. */
  readonly likelihood: (cause: Cause) => readonly number[];
}

/** Chance of the first of two outcomes for the causes named, and for all others. */
function twoWays(
  named: Readonly<Partial<Record<Cause, number>>>,
  others: number,
): (cause: Cause) => readonly number[] {
  return (cause) => {
    const first = named[cause] ?? others;
    return [first, 1 - first];
  };
}

const GOES_STAYS = (goes: string, stays: string): LadderRung['outcomes'] => [
  { outcome: 'goes', means: goes },
  { outcome: 'stays', means: stays },
];

const FOUND = (found: string, not: string): LadderRung['outcomes'] => [
  { outcome: 'found', means: found },
  { outcome: 'not found', means: not },
];

/** 15 to 30 % slower: shares of the growth curve above 3, between 1.5 and 3, and below. */
function growthShares(cause: Cause): readonly number[] {
  const [expected, spread] = CAUSE_BEHAVIOUR[cause].growth;
  // What an ear or a single pair of recordings can tell is no better than half a power.
  const width = Math.hypot(spread, 0.5);
  const below = (edge: number): number => 1 / (1 + Math.exp((-1.702 * (edge - expected)) / width));
  const stays = below(0.4);
  return [1 - below(3), below(3) - below(1.5), below(1.5) - stays, stays];
}

/**
 * The rungs. The order is that of builders: motor alone, with joint, with shaft and no propeller, propeller in air, in water.
 * Minutes and likelihoods are our judgement from builders' accounts; no published table is known.
 */
export const LADDER_TESTS: Readonly<Record<LadderTest, LadderRung>> = {
  'tighten-screws': {
    instruction:
      'Go over grub screws, motor mount, bush seats and the propeller nut, tighten each, and run at the same speed again.',
    minutes: 8,
    tools: ['hex key', 'screwdriver'],
    caution: CARE,
    recordable: true,
    outcomes: GOES_STAYS('Something was loose.', 'It is not a loose screw, unless the part is worn.'),
    likelihood: twoWays({ looseness: 0.75, unexplained: 0.1, 'structural-resonance': 0.08 }, 0.03),
  },
  'run-slower': {
    instruction: 'Run 15 to 30 % slower, and listen or record how far the shake falls.',
    minutes: 4,
    tools: [],
    caution: SPIN_GUARDED,
    recordable: true,
    outcomes: [
      {
        outcome: 'falls faster',
        means: 'It falls by far more than the square of the speed: the line ran near a resonance.',
      },
      {
        outcome: 'falls with the square',
        means: 'It falls to between a half and three quarters: something that turns is heavy on one side.',
      },
      {
        outcome: 'falls slower',
        means: 'It falls by less: a bend, a joint or a rub pushes at all speeds.',
      },
      { outcome: 'stays', means: 'It does not depend on the shaft.' },
    ],
    likelihood: growthShares,
  },
  'drive-still': {
    instruction: 'Leave everything where it is, stop the drive and record or listen again.',
    minutes: 2,
    tools: [],
    caution: SPIN_GUARDED,
    recordable: true,
    outcomes: [
      { outcome: 'stays', means: 'It comes from the mains or another machine, not from the line.' },
      { outcome: 'goes', means: 'The drive makes it.' },
    ],
    likelihood: twoWays({ electrical: 0.85, unexplained: 0.1 }, 0.01),
  },
  'press-panels': {
    instruction:
      'With the drive stopped, weight or wedge deck, bulkhead and motor bracket in turn, well away from the shaft; each time take the hands away and pass through the speed that shakes within seconds.',
    minutes: 8,
    tools: ['small weights', 'wooden wedge', 'tape'],
    caution: CARE,
    recordable: true,
    outcomes: [
      { outcome: 'changes', means: 'That part rings: damp or stiffen it.' },
      { outcome: 'stays', means: 'No panel is to blame.' },
    ],
    likelihood: twoWays({ 'structural-resonance': 0.8, looseness: 0.25, unexplained: 0.25 }, 0.07),
  },
  'propeller-off': {
    instruction: 'Take the propeller off and run at the same speed in air, a few seconds only.',
    minutes: 6,
    tools: ['spanner'],
    caution: `${CARE} A bush without water runs dry: keep the run short.`,
    recordable: true,
    outcomes: [
      {
        outcome: 'goes',
        means: 'The propeller makes it: its balance or its blades.',
      },
      { outcome: 'grows less', means: 'The propeller’s load has a part in it: a joint that carries torque.' },
      { outcome: 'stays', means: 'It is shaft, joint or motor.' },
      { outcome: 'grows', means: 'Something rattles without load: a joint, or a loose part.' },
    ],
    likelihood: (cause) => {
      const [gone, third, less, stays, grows] = CAUSE_BEHAVIOUR[cause].propellerOff;
      return [gone + third, less, stays, grows];
    },
  },
  'joint-turned': {
    instruction:
      'Mark joint and shaft, loosen the joint, turn it half a turn on the shaft, fasten it and run at the same speed.',
    minutes: 12,
    tools: ['hex key', 'marker'],
    caution: CARE,
    recordable: true,
    outcomes: [
      { outcome: 'changes', means: 'The joint is off centre, or sits badly on the shaft.' },
      { outcome: 'stays', means: 'The joint runs true: shaft or propeller.' },
    ],
    likelihood: (cause) => {
      const changes = CAUSE_BEHAVIOUR[cause].jointTurned;
      return [changes, 1 - changes];
    },
  },
  'motor-alone': {
    instruction: 'Loosen the joint from the motor and run the motor alone at the same speed.',
    minutes: 12,
    tools: ['hex key'],
    caution: CARE,
    recordable: true,
    outcomes: GOES_STAYS('The motor is quiet: joint, shaft or propeller.', 'The motor makes it by itself.'),
    likelihood: twoWays(
      { electrical: 0.1, 'structural-resonance': 0.6, looseness: 0.75, unexplained: 0.5 },
      0.96,
    ),
  },
  'motor-and-joint': {
    instruction: 'Draw the shaft out of the joint and run motor and joint at the same speed.',
    minutes: 18,
    tools: ['hex key'],
    caution: `${CARE} A free joint half flies outwards: bind it with a sleeve or take it off.`,
    recordable: true,
    outcomes: GOES_STAYS('Motor and joint run quietly: shaft or propeller.', 'It is motor or joint.'),
    likelihood: twoWays(
      { electrical: 0.1, misalignment: 0.6, 'structural-resonance': 0.65, looseness: 0.75, unexplained: 0.6 },
      0.96,
    ),
  },
  'in-water': {
    instruction: 'Run in the bath or moored, at the same speed, after a run in air with the propeller on.',
    minutes: 20,
    tools: ['bath', 'line to moor by'],
    caution: `${SPIN_GUARDED} No mains by the water.`,
    recordable: true,
    outcomes: [
      { outcome: 'goes', means: 'It rattles only without load: a joint that chatters, or a loose part.' },
      { outcome: 'stays', means: 'Load makes no difference: balance, bend, mount.' },
      { outcome: 'grows', means: 'It comes with load: the joint’s angle, or the blades.' },
    ],
    likelihood: (cause) => {
      const [gone, third, less, stays, grows] = CAUSE_BEHAVIOUR[cause].inAir;
      return [grows, stays, gone + third + less];
    },
  },
  'roll-shaft': {
    instruction:
      'Draw the shaft and roll it on glass, or turn it in its bushes against a fixed pointer and paper.',
    minutes: 25,
    tools: ['sheet of glass', 'paper'],
    caution: HANDS_OFF,
    recordable: false,
    outcomes: FOUND(
      'The shaft is bent by a sheet of paper (0.1 mm) or more.',
      'The shaft is straight within a sheet of paper.',
    ),
    likelihood: twoWays({ 'bent-shaft': 0.92, whirl: 0.3, rubbing: 0.2 }, 0.06),
  },
  'turn-by-hand': {
    instruction:
      'Turn the shaft slowly by hand through two turns; rock joint and propeller and feel for play.',
    minutes: 3,
    tools: [],
    caution: HANDS_OFF,
    recordable: false,
    outcomes: FOUND('It drags at one place, or there is play.', 'It turns evenly, without play.'),
    likelihood: twoWays({ rubbing: 0.75, looseness: 0.65, 'bent-shaft': 0.35, misalignment: 0.3 }, 0.06),
  },
  'align-with-sleeve': {
    instruction:
      'Put a rigid sleeve over both shaft ends in place of the joint, let the motor find its place, fasten it and put the joint back.',
    minutes: 30,
    tools: ['sleeve', 'shims', 'hex key'],
    caution: CARE,
    recordable: true,
    outcomes: GOES_STAYS('Motor and shaft were out of line.', 'They were in line.'),
    likelihood: twoWays({ misalignment: 0.8, 'joint-angle': 0.45, 'joint-phase': 0.15, rubbing: 0.3 }, 0.05),
  },
  'halve-angle': {
    instruction:
      'Shim or lower the motor so that the joint runs at half its angle, and run at the same speed.',
    minutes: 35,
    tools: ['shims', 'bevel gauge', 'hex key'],
    caution: CARE,
    recordable: true,
    outcomes: GOES_STAYS('The joint’s angle made it.', 'The angle was not to blame.'),
    likelihood: twoWays(
      { 'joint-angle': 0.85, misalignment: 0.35, 'joint-phase': 0.3, 'torsional-resonance': 0.5 },
      0.05,
    ),
  },
  'other-propeller': {
    instruction: 'Fit another propeller of the same size and run at the same speed.',
    minutes: 8,
    tools: ['spanner', 'second propeller'],
    caution: CARE,
    recordable: true,
    outcomes: GOES_STAYS('The first propeller was to blame.', 'It is not that propeller.'),
    likelihood: twoWays({ unbalance: 0.85, 'blade-pass': 0.3, whirl: 0.4, unexplained: 0.2 }, 0.04),
  },
  'propeller-turned': {
    instruction: 'Turn the propeller by 180° on its shaft, fasten it and run at the same speed.',
    minutes: 5,
    tools: ['spanner'],
    caution: CARE,
    recordable: true,
    outcomes: [
      { outcome: 'changes', means: 'Propeller and shaft are each out of balance and add or cancel.' },
      { outcome: 'stays', means: 'Only one of them is, or neither.' },
    ],
    likelihood: twoWays({ unbalance: 0.4, 'bent-shaft': 0.35, whirl: 0.3 }, 0.07),
  },
};
