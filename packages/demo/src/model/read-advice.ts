import { nextTrial, type LadderState, type MeasuredResonance } from '@sternline/core';
import {
  BALANCE_RUNS,
  EMPTY_BALANCE,
  type BalanceBook,
  type CalibrationBook,
  type LineAdvice,
  type RunReading,
} from './advice.js';
import { SHED_TOLERANCES, type LayoutTolerances } from './layout-tolerances.js';
import { asFields, asText, isPositive, type Fields } from './plain-data.js';

/**
 * Reads what a project file says was found out about a line. What cannot be read of it is left out: every answer follows
 * from the entries, so nothing wrong can come of one that is missing.
 *
 * @param value - anything; undefined, as in files from before there was advice, is none
 * @returns the entries that can be read, or undefined where there are none
 */
export function readAdvice(value: unknown): LineAdvice | undefined {
  const fields = asFields(value);
  if (!fields) return undefined;
  const balance = readBalance(asFields(fields['balance']));
  const calibration = readCalibration(asFields(fields['calibration']));
  const ladder = readLadder(fields['ladder']);
  return {
    ...(balance ? { balance } : {}),
    ...(calibration ? { calibration } : {}),
    ...(ladder ? { ladder } : {}),
  };
}

/** Reads how far a project file says that measures may be off; what is not said stays at its usual value. */
export function readTolerances(value: unknown): LayoutTolerances | undefined {
  const fields = asFields(value);
  if (!fields) return undefined;
  const given = (['place', 'diameter', 'angle'] as const).flatMap((name) => {
    const tolerance = fields[name];
    return tolerance === 0 || isPositive(tolerance) ? [[name, tolerance] as const] : [];
  });
  return { ...SHED_TOLERANCES, ...Object.fromEntries(given) };
}

const SIZES = ['speed', 'rotorMass', 'radius', 'mass'] as const;

function readBalance(fields: Fields | undefined): BalanceBook | undefined {
  if (!fields) return undefined;
  const runs = asFields(fields['runs']) ?? {};
  return {
    ...Object.fromEntries(SIZES.flatMap((name) => (isPositive(fields[name]) ? [[name, fields[name]]] : []))),
    angles: readAngles(fields['angles']) ?? EMPTY_BALANCE.angles,
    runs: Object.fromEntries(
      BALANCE_RUNS.flatMap((run) => {
        const reading = readRun(asFields(runs[run]));
        return reading ? [[run, reading]] : [];
      }),
    ),
    ...optionalText('channel', fields['channel']),
    ...optionalText('unit', fields['unit']),
    by: fields['by'] === 'removing' ? 'removing' : 'adding',
  };
}

function readAngles(value: unknown): BalanceBook['angles'] | undefined {
  if (!Array.isArray(value)) return undefined;
  const [first, second, third] = value.filter((angle): angle is number => Number.isFinite(angle));
  return first === undefined || second === undefined || third === undefined
    ? undefined
    : [first, second, third];
}

function readRun(fields: Fields | undefined): RunReading | undefined {
  const amplitude = fields?.['amplitude'];
  if (!fields || typeof amplitude !== 'number' || !(amplitude >= 0) || !Number.isFinite(amplitude)) {
    return undefined;
  }
  const error = fields['error'];
  return {
    amplitude,
    ...(isPositive(error) ? { error } : {}),
    ...optionalText('trialId', fields['trialId']),
  };
}

function readCalibration(fields: Fields | undefined): CalibrationBook | undefined {
  const list: unknown = fields?.['resonances'];
  if (!Array.isArray(list)) return undefined;
  return { resonances: list.flatMap((entry: unknown) => readResonance(asFields(entry)) ?? []) };
}

function readResonance(fields: Fields | undefined): MeasuredResonance | undefined {
  if (!fields) return undefined;
  const { frequency, speed, order, error } = fields;
  const common = {
    ...(isPositive(error) ? { error } : {}),
    medium: fields['medium'] === 'air' ? ('air' as const) : ('water' as const),
  };
  if (isPositive(frequency)) return { frequency, ...common };
  if (!isPositive(speed)) return undefined;
  return { speed, order: isPositive(order) ? order : 1, ...common };
}

/** A search is taken up again where its next question can be asked; else it begins anew. */
function readLadder(value: unknown): LadderState | undefined {
  const fields = asFields(value);
  if (!fields || !['causes', 'steps', 'ruledOut'].every((name) => Array.isArray(fields[name])))
    return undefined;
  try {
    const ladder = value as LadderState;
    const { trial, others, conclusion } = nextTrial(ladder);
    const gains = [...(trial ? [trial] : []), ...others].map(({ gain }) => gain);
    return gains.every(Number.isFinite) && (trial ?? conclusion) ? ladder : undefined;
  } catch {
    return undefined;
  }
}

function optionalText<Name extends string>(name: Name, value: unknown): Partial<Record<Name, string>> {
  const text = asText(value);
  return text === '' ? {} : ({ [name]: text } as Record<Name, string>);
}
