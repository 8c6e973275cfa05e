import type { JointLoad, LineLoads, ShaftLoad, SupportLoad } from '../loads/types.js';
import type { ShaftLine } from '../line/types.js';
import { makeReason } from './make-reason.js';
import { figure } from './statement.js';
import type { Reason } from './types.js';

/** Common practice, no source: a shaft is asked for one and a half times its fatigue strength. */
const FATIGUE = 1.5;

/** Full-size practice: bearings at most this many diameters apart. */
const LONGEST_SPAN = 40;

/** What the loads say of the parts that bear them. */
export function loadReasons({
  line,
  loads,
}: {
  readonly line: ShaftLine;
  readonly loads: LineLoads | undefined;
}): Reason[] {
  if (!loads) return [unknownTorque(line)];
  return [
    ...loads.joints.flatMap((joint) => [...fastenerReasons(joint), ...ratedTorque(joint)]),
    ...loads.shafts.flatMap((shaft) => strengthReasons(line, shaft)),
    ...loads.supports.flatMap((support) => bushReasons(line, support)),
    ...loads.joints.flatMap((joint) => rattleReasons(joint, loads.torque)),
    ...spanReasons(line, loads),
  ];
}

function unknownTorque({ propeller }: ShaftLine): Reason {
  const missing = propeller ? 'give its torque coefficient' : 'give the line a propeller, or a torque';
  const whose = propeller ? 'The torque of this propeller' : 'The torque';
  return makeReason('unknown-torque', {
    severity: 'note',
    template: `${whose} is not known, so loads and torsional resonances are not judged: ${missing}.`,
    figures: {},
    source: 'the propeller series has 2 to 7 blades and pitch over diameter from 0.5 to 1.4',
  });
}

function fastenerReasons({ joint, fastener }: JointLoad): Reason[] {
  if (!fastener || fastener.holds) return [];
  const { offer, holding, peakTorque, factor } = fastener;
  const walks = factor < 1;
  const start = walks
    ? `The set screws of joint ${joint + 1} will walk loose: they hold {holding} against a peak of {peak}.`
    : `The set screws of joint ${joint + 1} hold {holding}, {factor} times the peak of {peak}; {required} times is asked for.`;
  const seat = [offer?.flat ? 'on a flat' : '', offer?.threadLock ? 'with thread lock' : '']
    .filter(Boolean)
    .join(', ');
  const mend = offer ? ` {count} of {size}${seat === '' ? '' : `, ${seat}`}, would hold.` : '';
  return [
    makeReason('fastener', {
      severity: walks ? 'inside' : 'near',
      template: start + mend,
      figures: {
        holding: figure('torque', holding.torque),
        peak: figure('torque', peakTorque),
        factor: figure('ratio', factor),
        required: figure('ratio', fastener.required),
        ...(offer ? { count: figure('count', offer.count), size: figure('length', offer.size) } : {}),
      },
      source: 'holding power of set screws by size, from tables of their makers; factor for changing loads',
    }),
  ];
}

function ratedTorque({ joint, rated }: JointLoad): Reason[] {
  if (!rated || rated.within) return [];
  return [
    makeReason('rated-torque', {
      severity: 'inside',
      template: `Joint ${joint + 1} carries {value} at its peak; it is rated for {limit}.`,
      figures: { value: figure('torque', rated.value), limit: figure('torque', rated.limit) },
      source: 'the joint’s own figure, as entered',
    }),
  ];
}

function strengthReasons(line: ShaftLine, { shaft, safety }: ShaftLoad): Reason[] {
  const factor = Math.min(safety.fatigueFactor, safety.yieldFactor);
  if (factor >= FATIGUE) return [];
  return [
    makeReason('shaft-strength', {
      severity: factor < 1 ? 'inside' : 'near',
      template: `The ${line.shafts[shaft]?.name ?? 'shaft'} has {factor} times the strength that its loads ask for; {asked} times is common practice.`,
      figures: { factor: figure('ratio', factor), asked: figure('ratio', FATIGUE) },
      source: `DE-Goodman and yield; ${safety.source}`,
    }),
  ];
}

function bushReasons(line: ShaftLine, { shaft, at, bush }: SupportLoad): Reason[] {
  const share = Math.max(0, ...Object.values(bush.shares));
  if (share <= 1) return [];
  return [
    makeReason('bush', {
      severity: 'near',
      template: `The bush at {at} on the ${line.shafts[shaft]?.name ?? 'shaft'} runs at {share} times what ${bush.lining?.name ?? 'its lining'} bears.`,
      figures: { at: figure('length', at), share: figure('ratio', share) },
      source: bush.lining?.source ?? 'limits of the lining',
    }),
  ];
}

function rattleReasons({ joint, rattles, torqueSwing }: JointLoad, torque: number): Reason[] {
  if (!rattles) return [];
  return [
    makeReason('rattle', {
      severity: 'near',
      template: `Joint ${joint + 1} rattles: its torque swings by {swing} about a mean of {mean}, so the pins change sides.`,
      figures: { swing: figure('torque', torqueSwing), mean: figure('torque', torque) },
      source: 'torsional response to the joints and the blades; noisy in air, quieter in water',
    }),
  ];
}

function spanReasons(line: ShaftLine, { spans }: LineLoads): Reason[] {
  return spans
    .filter(({ kind, diameters }) => kind === 'span' && diameters > LONGEST_SPAN)
    .map(({ shaft, length, diameters }) =>
      makeReason('span', {
        severity: 'note',
        template: `The ${line.shafts[shaft]?.name ?? 'shaft'} runs {length} between bushes, {diameters} diameters; full-size practice is 20 to {most}.`,
        figures: {
          length: figure('length', length),
          diameters: figure('count', diameters),
          most: figure('count', LONGEST_SPAN),
        },
        source: 'published practice of full-size shaft lines',
      }),
    );
}
