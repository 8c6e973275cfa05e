import type { ShaftLine } from '../line/types.js';
import { PLAIN_PIN_LIMIT } from '../motion/plain-pin-limit.js';
import type { SpeedFluctuation } from '../motion/types.js';
import { figure, makeStatement } from './statement.js';
import type { AvoidBand, Figure, JointAssessment, Reason, ReasonKind, SpeedLimit, Verdict } from './types.js';

/** Common practice: within half a margin of a band is near it. */
const NEAR = 0.5;

/** Rule of the makers of cardan shafts: the residual fluctuation of a line stays under that of one joint at 3°. */
const SMOOTH = 0.0027;

const SEVERITY: readonly Reason['severity'][] = ['inside', 'near', 'note', 'clear'];

interface Facts {
  readonly line: ShaftLine;
  readonly speed: number;
  readonly joints: readonly JointAssessment[];
  readonly fluctuation: SpeedFluctuation;
  readonly bands: readonly AvoidBand[];
  readonly limit: SpeedLimit;
}

/** Every reason that bears on the verdict, most important first. */
export function findReasons(facts: Facts): Reason[] {
  const reasons = [
    ...bandReasons(facts),
    ...aboveFirstWhirl(facts),
    ...jointReasons(facts),
    ...fluctuationReasons(facts),
    ...clearance(facts),
  ];
  return reasons
    .map((reason, i) => ({ reason, rank: SEVERITY.indexOf(reason.severity) * 1000 + i }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ reason }) => reason);
}

/** The worst that any reason says. */
export function verdictOf(reasons: readonly Reason[]): Verdict {
  if (reasons.some((reason) => reason.severity === 'inside')) return 'inside';
  return reasons.some((reason) => reason.severity === 'near') ? 'near' : 'clear';
}

function makeReason(
  kind: ReasonKind,
  parts: {
    readonly severity: Reason['severity'];
    readonly template: string;
    readonly figures: Readonly<Record<string, Figure>>;
    readonly source: string;
  },
): Reason {
  const { severity, template, figures, source } = parts;
  return { kind, severity, source, ...makeStatement(template, figures) };
}

function bandReasons({ speed, bands }: Facts): Reason[] {
  return bands.flatMap((band) => {
    const reach = (NEAR * band.margin) / (1 - band.margin);
    const severity = inBand(speed, band) ? 'inside' : near(speed, band, reach) ? 'near' : undefined;
    if (!severity) return [];
    const where = severity === 'inside' ? 'inside' : speed < band.from ? 'close below' : 'close above';
    const template = `At {speed} it runs ${where} the band of the ${band.name} ({from} to {to}).`;
    const figures = {
      speed: figure('speed', speed),
      from: figure('speed', band.from),
      to: figure('speed', band.to),
      margin: figure('share', band.margin),
    };
    const source = 'margin by common practice; critical speeds of the beam model of the whole line';
    return [makeReason('band', { severity, template, figures, source })];
  });
}

function inBand(speed: number, { from, to }: AvoidBand): boolean {
  return speed >= from && speed <= to;
}

function near(speed: number, { from, to }: AvoidBand, reach: number): boolean {
  return speed >= from * (1 - reach) && speed <= to * (1 + reach);
}

function aboveFirstWhirl({ speed, bands }: Facts): Reason[] {
  const first = firstWhirl(bands);
  if (!first || speed <= first.to) return [];
  return [
    makeReason('above-first-whirl', {
      severity: 'near',
      template: `At {speed} it runs above the ${first.name}: every start and stop passes through {from} to {to}.`,
      figures: {
        speed: figure('speed', speed),
        from: figure('speed', first.from),
        to: figure('speed', first.to),
      },
      source: 'common practice: small shaft lines run below their first whirl',
    }),
  ];
}

/** The lowest band of the first order. */
export function firstWhirl(bands: readonly AvoidBand[]): AvoidBand | undefined {
  return bands.find((band) => band.order === 1 && band.excitation === 'unbalance');
}

function jointReasons({ line, speed, joints }: Facts): Reason[] {
  return joints.flatMap(({ index, angle, kind }) => {
    const found: Reason[] = [];
    const name = `Joint ${index + 1}`;
    const most = line.joints[index]?.maxAngle;
    if (most !== undefined && angle > most) {
      found.push(
        makeReason('joint-angle-limit', {
          severity: 'inside',
          template: `${name} stands at {angle}; its maker allows {most}.`,
          figures: { angle: figure('angle', angle), most: figure('angle', most) },
          source: 'the joint’s own figure, as entered',
        }),
      );
    }
    const product = speed * angle;
    if (kind === 'universal' && product > PLAIN_PIN_LIMIT) {
      found.push(
        makeReason('speed-times-angle', {
          severity: 'note',
          template: `${name} at {angle} and {speed} comes to {product}; joints with plain pins wear fast and rattle above {most}.`,
          figures: {
            angle: figure('angle', angle),
            speed: figure('speed', speed),
            product: figure('speed-angle', product),
            most: figure('speed-angle', PLAIN_PIN_LIMIT),
          },
          source: 'published advice of makers of plain-pin joints: rpm × degrees at most 15 000',
        }),
      );
    }
    return found;
  });
}

function fluctuationReasons({ fluctuation }: Facts): Reason[] {
  if (fluctuation.degree <= SMOOTH) return [];
  return [
    makeReason('fluctuation', {
      severity: 'note',
      template:
        'The propeller’s speed swings by {degree} within each turn, twice a turn; cardan shafts are held to {most}.',
      figures: { degree: figure('share', fluctuation.degree), most: figure('share', SMOOTH) },
      source: 'rule of makers of cardan shafts: residual fluctuation at most 0.0027, one joint at 3°',
    }),
  ];
}

function clearance({ speed, bands, limit }: Facts): Reason[] {
  const first = firstWhirl(bands);
  if (!first || speed > limit.speed) return [];
  return [
    makeReason('margin', {
      severity: 'clear',
      template: 'The first whirl is at {critical}, {times} times the wanted {speed}.',
      figures: {
        critical: figure('speed', Math.min(...first.criticalSpeeds)),
        times: figure('ratio', Math.min(...first.criticalSpeeds) / speed),
        speed: figure('speed', speed),
      },
      source: 'critical speeds of the beam model of the whole line',
    }),
  ];
}
