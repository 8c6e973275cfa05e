import { jointAngles, yokePhase, type Assessment, type ShaftLine } from '@sternline/core';
import type { LineMeasures } from '../model/measures.js';
import type { Units } from '../model/project.js';
import { formatFigure } from '../model/units.js';
import { phaseSentence } from './phase-words.js';
import { bandThrottle } from './running-words.js';
import { verdictName } from './verdict-words.js';

/** A step of the sheet, to be ticked; one that turns a shaft carries its cautions. */
export interface SheetStep {
  readonly text: string;
  readonly turns?: 'by hand' | 'by motor';
}

/** Beside every step that turns a shaft. */
export const CAUTIONS: Readonly<Record<'by hand' | 'by motor', string>> = {
  'by hand': 'Battery off and disconnected before you touch shaft or propeller.',
  'by motor':
    'Model held fast, propeller off or guarded; transmitter on first and off last; eyes protected; fingers, hair, sleeves and leads clear; nobody in line with the propeller. Disconnect the battery before touching anything.',
};

/** What the sheet is for, in a sentence or two. */
export function sheetSentence(line: ShaftLine, assessment: Assessment | undefined, units: Units): string {
  if (!assessment) return `“${line.name}” could not be computed; see the Line leaf for why.`;
  const { speed, speedLimit, verdict } = assessment;
  const limit = Number.isFinite(speedLimit.speed)
    ? ` Its speed limit is ${formatFigure(speedLimit.speed, 'speed', units)}.`
    : '';
  const first = verdict === 'inside' ? ' Settle that before you buy: another speed, or another layout.' : '';
  return `To build “${line.name}” for ${formatFigure(speed, 'speed', units)}: ${verdictName(assessment).toLowerCase()}.${limit}${first}`;
}

/** How the line is set up, with the battery off. */
export function settingSteps(line: ShaftLine, measures: LineMeasures, units: Units): SheetStep[] {
  const angles = jointAngles(line).map((angle, joint) => ({ angle, joint }));
  const universal = angles.filter(({ joint }) => line.joints[joint]?.kind === 'universal');
  const named = universal.map(
    ({ angle, joint }) => `joint ${joint + 1} at ${formatFigure(angle, 'angle', units)}`,
  );
  return [
    {
      text: 'Set the tube on its marks, then the motor by a rigid dummy: a sleeve over both shaft ends in place of the joint.',
    },
    ...(named.length > 0
      ? [{ text: `Set ${named.join(', ')}, in the side view and from above. Within 1° is close enough.` }]
      : []),
    ...phaseSteps(line, measures, units),
    ...line.joints.flatMap((joint, index): SheetStep[] =>
      joint.fastener?.kind === 'set-screw'
        ? [
            {
              text: `File a flat under each set screw of joint ${index + 1}; clean, screw home${joint.fastener.threadLock === true ? ' with thread lock' : ''}.`,
            },
          ]
        : [],
    ),
    { text: 'Fill the tube with grease or oil; lock nuts on the propeller.' },
  ];
}

function phaseSteps(line: ShaftLine, { splineTeeth }: LineMeasures, units: Units): SheetStep[] {
  const phase = yokePhase(line, splineTeeth === undefined ? {} : { teeth: splineTeeth });
  return phase.shafts.map((shaft) => ({
    text: phaseSentence(phase, shaft, line, units).split(' A degree of')[0] ?? '',
  }));
}

/** What is checked before the motor is first connected. */
export function checkSteps(line: ShaftLine, units: Units): SheetStep[] {
  const length = (value: number) => formatFigure(value, 'length', units);
  const runout = line.shafts.at(-1)?.runout;
  return [
    {
      text: `Run-out of the shaft at mid-length: at most ${length(Math.min(runout ?? 0.00008, 0.00008))}. Found: ______`,
      turns: 'by hand',
    },
    { text: `Play of the shaft in each bush: ${length(0.000025)} to ${length(0.00005)}. Found: ______` },
    { text: `End float: ${length(0.0005)} to ${length(0.001)}. Found: ______` },
    { text: 'The shaft turns freely by hand through a whole turn, with no tight spot.', turns: 'by hand' },
    {
      text: 'Propeller balanced on knife edges, nut locked, hub about one shaft diameter behind the last bush.',
    },
  ];
}

/** The first runs. */
export function runSteps(assessment: Assessment, units: Units): SheetStep[] {
  const { speed, speedLimit } = assessment;
  const top = Math.min(speed, speedLimit.speed);
  return [
    {
      text: 'Motor alone, then with the joint, then with the shaft and no propeller: a few seconds each, low power. Bushes and seals run dry only that long.',
      turns: 'by motor',
    },
    {
      text: 'In the bath: trim the motor’s place by the least current at low power, then tighten. Mains nowhere near the water.',
      turns: 'by motor',
    },
    {
      text: `Up to ${formatFigure(top, 'speed', units)} in steps; pass through the bands below within seconds, and never dwell to search for one.`,
      turns: 'by motor',
    },
    {
      text: 'After a minute, with the battery disconnected, feel every bush: warm is well, hot is dry or out of line.',
      turns: 'by hand',
    },
    {
      text: 'Charge and store lithium cells as their maker says. On the water keep clear of swimmers and wildlife, and follow the local rules.',
    },
  ];
}

/** Bands to pass quickly, by speed and throttle. */
export function sheetBands(
  line: ShaftLine,
  { avoidBands }: Assessment,
  units: Units,
): readonly (readonly string[])[] {
  const driven = line.motor !== undefined && line.supply !== undefined && line.propeller !== undefined;
  return avoidBands.map((band) => [
    `${band.name.charAt(0).toUpperCase()}${band.name.slice(1)}`,
    `${formatFigure(band.from, 'speed', units)} to ${formatFigure(band.to, 'speed', units)}`,
    driven ? bandThrottle(line, band) : 'enter motor, battery and propeller',
  ]);
}
