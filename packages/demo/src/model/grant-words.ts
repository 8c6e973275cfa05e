/** What a browser says of a microphone that it granted; what it does not say is absent. */
export interface SoundGrant {
  readonly echoCancellation?: boolean | string;
  readonly noiseSuppression?: boolean;
  readonly autoGainControl?: boolean;
  /** Hz */
  readonly sampleRate: number;
  /** Whether every sample is kept, or the browser compresses. */
  readonly kept: 'every-sample' | 'compressed';
}

const PROCESSING = [
  ['echoCancellation', 'echo cancelling', 'can swallow a steady hum'],
  ['noiseSuppression', 'noise suppression', 'can swallow a steady hum'],
  ['autoGainControl', 'automatic gain', 'evens out the level, so levels cannot be compared'],
] as const;

/**
 * What was granted of a microphone, in sentences.
 *
 * @param grant - as read back from the track
 * @returns processing first, then the rate and what it shows
 */
export function soundGrantWords(grant: SoundGrant): string[] {
  return [...processingWords(grant), rateWords(grant)];
}

function processingWords(grant: SoundGrant): string[] {
  const of = (wanted: 'off' | 'on' | 'untold') =>
    PROCESSING.filter(([name]) => standing(grant[name]) === wanted);
  const [off, on, untold] = [of('off'), of('on'), of('untold')];
  if (off.length === PROCESSING.length)
    return ['Echo cancelling, noise suppression and automatic gain are off, as asked.'];
  return [
    ...(off.length > 0
      ? [`${capital(list(off.map(([, name]) => name)))} ${off.length > 1 ? 'are' : 'is'} off, as asked.`]
      : []),
    ...on.map(([, name, harm]) => `${capital(name)} stayed on, though it was asked to be off: it ${harm}.`),
    ...(untold.length > 0
      ? [
          `This browser does not say whether ${list(untold.map(([, name]) => name))} ${untold.length > 1 ? 'are' : 'is'} off: a steady hum may be weakened.`,
        ]
      : []),
  ];
}

function standing(value: boolean | string | undefined): 'off' | 'on' | 'untold' {
  if (value === undefined) return 'untold';
  return value === false ? 'off' : 'on';
}

// That phone microphones fade at the low end is common knowledge among their users; the figure is from memory.
function rateWords({ sampleRate, kept }: SoundGrant): string {
  const rate = String(Math.round(sampleRate)).replace(/\B(?=(\d{3})+$)/g, '\u202f');
  const how =
    kept === 'every-sample'
      ? 'every sample is kept'
      : 'the browser compresses it, and faint tones may be lost';
  return `${rate} samples a second, ${how}. Many phone microphones fade below 50 to 100 Hz, so the lowest orders read low.`;
}

/**
 * What a motion sensor was found to give, in sentences.
 *
 * @param rate - Hz, counted
 * @returns the rate and what it shows
 */
export function motionGrantWords(rate: number): string[] {
  return [
    `The sensor gives ${rate.toFixed(1)} samples a second, counted: lines up to ${(rate / 2).toFixed(0)} Hz stand where they are, which is a first order up to ${String(Math.round((rate * 30) / 100) * 100).replace(/\B(?=(\d{3})+$)/g, '\u202f')} rpm. What lies higher folds back.`,
  ];
}

/** `a, b and c` */
function list(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
