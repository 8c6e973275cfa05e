import { CaptureError } from './capture-types.js';
import type { Capture } from './capture-types.js';
import { motionGrantWords } from './grant-words.js';
import { motionFile, motionRate } from './motion-file.js';
import type { MotionSample } from './motion-file.js';

/** ms in which a sensor that there is has spoken many times over. */
const LISTENED = 1500;

/**
 * Asks for the motion sensor and counts its rate.
 *
 * @param name - of the file to come, without its ending
 * @returns the sensor, ready to record; its `rate` in Hz
 * @throws CaptureError with what to do instead, where there is none or it is denied
 */
export async function captureMotion(name: string): Promise<Capture & { readonly rate: number }> {
  if (typeof DeviceMotionEvent === 'undefined') throw new CaptureError(NO_SENSOR);
  await askForMotion();
  let samples: MotionSample[] = [];
  let strongest = 0;
  const take = (event: DeviceMotionEvent) => {
    const sample = sampleOf(event);
    if (!sample) return;
    const before = samples.at(-1);
    samples.push(sample);
    if (before) strongest = Math.max(strongest, distance(sample, before));
  };
  const release = () => {
    removeEventListener('devicemotion', take);
  };
  addEventListener('devicemotion', take);
  await new Promise((resolve) => setTimeout(resolve, LISTENED));
  const rate = motionRate(samples);
  if (rate === undefined) {
    release();
    throw new CaptureError(SILENT);
  }
  return {
    rate,
    granted: motionGrantWords(rate),
    level: () => {
      const level = strongest;
      strongest = 0;
      return level;
    },
    begin: () => {
      samples = [];
    },
    end: () => {
      release();
      return Promise.resolve(motionFile(`${name}.csv`, samples));
    },
    release,
  };
}

/** On iOS the sensor is granted at a tap, and only there does the event class ask for it. */
async function askForMotion(): Promise<void> {
  const { requestPermission } = DeviceMotionEvent as unknown as {
    readonly requestPermission?: () => Promise<string>;
  };
  if (!requestPermission) return;
  const answer = await requestPermission.call(DeviceMotionEvent).catch(() => 'denied');
  if (answer !== 'granted') throw new CaptureError(DENIED);
}

const INSTEAD =
  'Record with a motion logger on the phone, as CSV, and choose the file above; or record sound, which tells more.';
const NO_SENSOR = `This browser gives a page no motion sensor. ${INSTEAD}`;
const SILENT = `No motion arrives: this device has no sensor for it, or the browser keeps it from a page opened this way. ${INSTEAD}`;
const DENIED = `Motion was denied. Close this page and open it again to be asked once more. ${INSTEAD}`;

/** With gravity where the phone gives it: it is the rawer reading, and gravity is told apart when it is read. */
function sampleOf(event: DeviceMotionEvent): MotionSample | undefined {
  const read = event.accelerationIncludingGravity ?? event.acceleration;
  if (typeof read?.x !== 'number' || typeof read.y !== 'number' || typeof read.z !== 'number')
    return undefined;
  return { time: event.timeStamp, x: read.x, y: read.y, z: read.z };
}

function distance(a: MotionSample, b: MotionSample): number {
  return Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
}
