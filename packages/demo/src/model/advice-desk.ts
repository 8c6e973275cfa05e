import {
  calibrateLine,
  compareLines,
  compareRecordings,
  diagnoseTrials,
  orderAmplitudes,
  proposeRemedies,
  startLadder,
  type CalibrateLineOptions,
  type CompareLinesOptions,
  type CompareRecordingsOptions,
  type Finding,
  type LadderState,
  type LineCalibration,
  type LineComparison,
  type Recording,
  type RecordingComparison,
  type Remedy,
  type RemedyOptions,
  type ShaftLine,
} from '@sternline/core';

/** The first order of one recording, on one channel. */
export interface FirstOrder {
  readonly channel: string;
  readonly unit: string;
  readonly amplitude: number;
  readonly error: number;
  readonly seen: boolean;
}

/** The costly work of giving advice: what each piece is asked and answers, all of it plain data. */
export interface AdviceDesk {
  compareLayouts(input: {
    readonly lines: readonly ShaftLine[];
    readonly options: CompareLinesOptions;
  }): LineComparison;
  compareTrials(input: {
    readonly before: Recording;
    readonly after: Recording;
    readonly options: CompareRecordingsOptions;
  }): RecordingComparison;
  /** Changes to a line, the best worth first. */
  remedies(input: { readonly line: ShaftLine; readonly options: RemedyOptions }): Remedy[];
  calibrate(input: { readonly line: ShaftLine; readonly options: CalibrateLineOptions }): LineCalibration;
  /** A search for the cause that begins with what all trials of a line say together. */
  startSearch(input: {
    readonly line: ShaftLine;
    readonly trials: readonly { readonly recording: Recording; readonly speed: number }[];
  }): LadderState;
  firstOrder(input: {
    readonly recording: Recording;
    /** rad/s */
    readonly speed: number;
    /** The one to read; absent, or where there is none of that name, the one that shows it most. */
    readonly channel?: string;
  }): FirstOrder;
}

/** The same work wherever it is done: in the worker, or on the page where there is none. */
export const adviceDesk: AdviceDesk = {
  compareLayouts: ({ lines, options }) => compareLines(lines, options),
  compareTrials: ({ before, after, options }) => compareRecordings(before, after, options),
  remedies: ({ line, options }) => proposeRemedies(line, options),
  calibrate: ({ line, options }) => calibrateLine(line, options),
  startSearch: ({ line, trials }) => startLadder({ line, findings: findingsOf(line, trials) }),
  firstOrder: ({ recording, speed, channel }) => {
    const { orders } = orderAmplitudes({ recording, speed, orders: [1] });
    const channels = [...(orders[0]?.channels ?? [])].sort((a, b) => b.amplitude - a.amplitude);
    const first = channels.find((one) => one.channel === channel) ?? channels[0];
    if (!first) throw new Error('the recording shows no first order');
    const { amplitude, amplitudeError: error, seen, unit } = first;
    return { channel: first.channel, unit, amplitude, error, seen };
  },
};

// A line is tried as it runs unless the builder says otherwise: propeller on, in water.
const AS_IT_RUNS = { propeller: 'fitted', medium: 'water' } as const;

function findingsOf(
  line: ShaftLine,
  trials: readonly { readonly recording: Recording; readonly speed: number }[],
): readonly Finding[] {
  const told = trials.map((trial) => ({ ...trial, conditions: AS_IT_RUNS }));
  return diagnoseTrials({ trials: told, line }).findings;
}
