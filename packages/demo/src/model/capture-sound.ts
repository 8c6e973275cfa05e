import { CaptureError } from './capture-types.js';
import type { Capture } from './capture-types.js';
import { soundGrantWords } from './grant-words.js';
import { wavFile } from './wav-file.js';

/** Everything that would make speech clearer and a hum fainter is asked to be off. */
const ASKED: MediaTrackConstraints = {
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
  channelCount: 1,
};

/**
 * Asks for the microphone, with all processing of speech off.
 *
 * @param name - of the file to come, without its ending
 * @returns the microphone, ready to record
 * @throws CaptureError with what to do instead, where there is none or it is denied
 */
export async function captureSound(name: string): Promise<Capture> {
  const stream = await askForMicrophone();
  const settings = stream.getAudioTracks()[0]?.getSettings() ?? {};
  const rate = settings.sampleRate;
  const context = new AudioContext(rate ? { sampleRate: rate } : {});
  await context.resume();
  const source = context.createMediaStreamSource(stream);
  const taker = (await takeSamples(context, source)) ?? takeCompressed(stream);
  const meter = levelMeter(context, source);
  const release = () => {
    for (const track of stream.getTracks()) track.stop();
    void context.close();
  };
  const { echoCancellation, noiseSuppression, autoGainControl } = settings;
  return {
    granted: soundGrantWords({
      ...known({ echoCancellation, noiseSuppression, autoGainControl }),
      sampleRate: context.sampleRate,
      kept: taker.kept,
    }),
    level: meter,
    begin: taker.begin,
    end: async () => {
      const file = await taker.end(name);
      release();
      return file;
    },
    release,
  };
}

async function askForMicrophone(): Promise<MediaStream> {
  // Absent on pages without TLS, whatever the type says.
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (!devices) throw new CaptureError(NO_MICROPHONE_HERE);
  try {
    return await devices.getUserMedia({ audio: ASKED });
  } catch (error) {
    const name = error instanceof DOMException ? error.name : '';
    throw new CaptureError(REFUSALS[name] ?? OTHER);
  }
}

const INSTEAD =
  'Record with the phone’s own recorder, as WAV where it offers that, and choose the file above.';
const NO_MICROPHONE_HERE = `This browser gives a page opened this way no microphone. ${INSTEAD}`;
const REFUSALS: Partial<Record<string, string>> = {
  NotAllowedError: `The microphone was denied. Allow it for this page in the browser’s settings and try again; or: ${lower(INSTEAD)}`,
  NotFoundError: `No microphone was found. ${INSTEAD}`,
  NotReadableError: `The microphone is in use by another program. Close that one and try again; or: ${lower(INSTEAD)}`,
};
const OTHER = `The microphone could not be opened. ${INSTEAD}`;

function lower(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

/** How samples are taken, until they are a file. */
interface Taker {
  readonly kept: 'every-sample' | 'compressed';
  readonly begin: () => void;
  readonly end: (name: string) => Promise<File>;
}

/** Every sample, through an audio worklet; undefined where its script cannot be loaded, as on a page opened from disk. */
async function takeSamples(context: AudioContext, source: AudioNode): Promise<Taker | undefined> {
  try {
    await context.audioWorklet.addModule(new URL('capture-worklet.js', document.baseURI).href);
  } catch {
    return undefined;
  }
  const node = new AudioWorkletNode(context, 'capture', { numberOfOutputs: 0 });
  const blocks: Float32Array<ArrayBuffer>[] = [];
  let taking = false;
  node.port.onmessage = ({ data }: MessageEvent<Float32Array<ArrayBuffer>>) => {
    if (taking) blocks.push(data);
  };
  source.connect(node);
  return {
    kept: 'every-sample',
    begin: () => {
      taking = true;
    },
    end: (name) => {
      taking = false;
      return Promise.resolve(wavFile(`${name}.wav`, { sampleRate: context.sampleRate, blocks }));
    },
  };
}

const LOSSLESS = 'audio/webm;codecs=pcm';

/** What the browser's own recorder gives; some can be asked for plain samples. */
function takeCompressed(stream: MediaStream): Taker {
  if (typeof MediaRecorder === 'undefined') throw new CaptureError(OTHER);
  const lossless = MediaRecorder.isTypeSupported(LOSSLESS);
  const recorder = new MediaRecorder(stream, lossless ? { mimeType: LOSSLESS } : {});
  const parts: Blob[] = [];
  recorder.addEventListener('dataavailable', ({ data }) => parts.push(data));
  return {
    kept: lossless ? 'every-sample' : 'compressed',
    begin: () => {
      recorder.start();
    },
    end: (name) =>
      new Promise((resolve) => {
        const ending = recorder.mimeType.includes('mp4') ? 'm4a' : 'webm';
        recorder.addEventListener('stop', () => {
          resolve(new File(parts, `${name}.${ending}`, { type: recorder.mimeType }));
        });
        recorder.stop();
      }),
  };
}

function levelMeter(context: AudioContext, source: AudioNode): () => number {
  const analyser = context.createAnalyser();
  analyser.fftSize = 8192;
  source.connect(analyser);
  const latest = new Float32Array(analyser.fftSize);
  return () => {
    analyser.getFloatTimeDomainData(latest);
    return latest.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  };
}

/** Without what the browser does not say. */
function known<Settings extends object>(
  settings: Settings,
): { [Name in keyof Settings]?: NonNullable<Settings[Name]> } {
  return Object.fromEntries(Object.entries(settings).filter(([, value]) => value !== undefined)) as {
    [Name in keyof Settings]?: NonNullable<Settings[Name]>;
  };
}
