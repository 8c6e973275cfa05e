import {
  calibrateLine,
  compareRecordings,
  orderAmplitudes,
  type CalibrateLineOptions,
  type CompareRecordingsOptions,
  type LineCalibration,
  type Recording,
  type RecordingComparison,
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
  compareTrials(input: {
    readonly before: Recording;
    readonly after: Recording;
    readonly options: CompareRecordingsOptions;
  }): RecordingComparison;
  calibrate(input: { readonly line: ShaftLine; readonly options: CalibrateLineOptions }): LineCalibration;
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
  compareTrials: ({ before, after, options }) => compareRecordings(before, after, options),
  calibrate: ({ line, options }) => calibrateLine(line, options),
  firstOrder: ({ recording, speed, channel }) => {
    const { orders } = orderAmplitudes({ recording, speed, orders: [1] });
    const channels = [...(orders[0]?.channels ?? [])].sort((a, b) => b.amplitude - a.amplitude);
    const first = channels.find((one) => one.channel === channel) ?? channels[0];
    if (!first) throw new Error('the recording shows no first order');
    const { amplitude, amplitudeError: error, seen, unit } = first;
    return { channel: first.channel, unit, amplitude, error, seen };
  },
};
