import { describe, expect, it } from 'vitest';
import {
  decodeText,
  readDelimited,
  readWav,
  readZip,
  RecordingError,
  sniffFile,
  type Recording,
} from '@sternline/core';
import { createRandom, type Random } from '../../../packages/core/src/numerics/random.js';
import oddFixtures from '../../reference/recording/odd-wav.json';
import wavFixtures from '../../reference/recording/wav.json';
import zipFixtures from '../../reference/recording/zip.json';

/*
 * Files damaged by chance, seeded: each must be read into finite samples, or refused with a place, within two seconds.
 * STERNLINE_CASES sets how many; DEVELOPERS.md has the command.
 */
const CASES = Math.max(1000, Number(process.env['STERNLINE_CASES'] ?? 20_000));
const TIME = 120_000 + 10 * CASES;
/** Shares of the cases. */
const [TEXTS, WAVES, ZIPS] = [0.6 * CASES, 0.3 * CASES, 0.1 * CASES];

const whole = (random: Random, below: number): number => Math.floor(random.uniform() * below);
const pick = <T>(random: Random, items: readonly T[]): T => items[whole(random, items.length)]!;

/** Texts of every shape that is read, small, so that many cases fit into a test run. */
function texts(): string[] {
  const rows = (write: (i: number) => string, count = 36): string =>
    Array.from({ length: count }, (_, i) => write(i)).join('\n') + '\n';
  const wave = (i: number, axis: number): string =>
    (0.5 * Math.sin(0.7 * i * (axis + 1)) + (axis === 2 ? 9.81 : 0)).toFixed(4);
  const axes = (i: number, mark = ','): string => [0, 1, 2].map((axis) => wave(i, axis)).join(mark);
  const comma = (text: string): string => text.replaceAll('.', ',');
  return [
    'time,x,y,z\n' + rows((i) => `${(i / 100).toFixed(3)},${axes(i)}`),
    't (ms);ax (g);ay (g);az (g)\n' + comma(rows((i) => `${10 * i};${axes(i, ';')}`)),
    'time\tax\tay\taz\n' +
      rows((i) => `2024-05-01 10:00:00.${String(10 * i).padStart(3, '0')}\t${axes(i, '\t')}`),
    '# rate: 100 Hz\nx y z\n' + rows((i) => axes(i, ' ')),
    '"t","x","y","z"\n' + rows((i) => `"${i / 100}","${axes(i, '","')}"`),
    'sep=;\ntimestamp;sensor;x;y;z\n' +
      rows((i) => `${1.7e12 + 10 * i};${i % 2 ? 'gyroscope' : 'accelerometer'};${axes(i, ';')}`),
    't,x,y,z\n' + comma(rows((i) => `${(i / 100).toFixed(4)},${axes(i)}`)),
    rows((i) => `{"t":${i / 100},"acc":{"x":${wave(i, 0)},"y":${wave(i, 1)},"z":${wave(i, 2)}}}`),
    `{"device":"a","samples":[${rows((i) => `{"time":${10 * i},"x":${wave(i, 0)},"y":${wave(i, 1)}}`)
      .trim()
      .replaceAll('\n', ',')}]}`,
    JSON.stringify({
      t: Array.from({ length: 36 }, (_, i) => i / 50),
      x: Array.from({ length: 36 }, (_, i) => +wave(i, 0)),
    }),
    'frequency,amplitude\n' + rows((i) => `${i},${wave(i, 0)}`),
    'time,latitude,longitude,speed\n' + rows((i) => `${i},52.1,4.3,0`),
  ];
}

const TOKENS = [
  '',
  ',',
  ';',
  '\t',
  ' ',
  '"',
  '""',
  "'",
  '\n',
  '\n\n',
  '\r',
  '\r\n',
  '.',
  '-',
  '−',
  '+',
  'e',
  'E9',
  '1e308',
  '1e999',
  '-0',
  '0',
  '00',
  '999999999999',
  '1e-320',
  'NaN',
  'Infinity',
  '-Infinity',
  'null',
  '[',
  ']',
  '{',
  '}',
  ':',
  '#',
  '//',
  'x',
  'time',
  'g',
  '\0',
  '\ufeff',
  '\ufffd',
  '²',
  '٣',
  '🙂',
  'a'.repeat(300),
  ','.repeat(80),
  '\n'.repeat(80),
  '"'.repeat(5),
  '1970-01-01',
  '25:61',
  'PK\u0003\u0004',
];

function damagedText(original: string, random: Random): string {
  let text = original;
  for (let hits = 1 + whole(random, 6); hits > 0; hits--) {
    // Heads are short and decide much, so they are hit as often as all the rest.
    const at = whole(random, random.uniform() < 0.5 ? Math.min(text.length, 80) : text.length);
    const length = random.uniform() < 0.8 ? whole(random, 4) : whole(random, text.length);
    const to = at + length;
    const kind = whole(random, 6);
    if (kind < 3) text = text.slice(0, at) + pick(random, TOKENS) + text.slice(to);
    else if (kind === 3) text = text.slice(0, to) + text.slice(at);
    else if (kind === 4)
      text = random.uniform() < 0.3 ? text.slice(0, at) : text.slice(at) + text.slice(0, at);
    else text = text.slice(0, at) + String.fromCharCode(whole(random, 300)) + text.slice(at + 1);
  }
  return text;
}

function damagedBytes(original: Uint8Array, random: Random, head: number): Uint8Array {
  const cut = random.uniform() < 0.3 ? whole(random, original.length + 1) : original.length;
  const tail = random.uniform() < 0.1 ? whole(random, 60) : 0;
  const bytes = new Uint8Array(cut + tail);
  bytes.set(original.subarray(0, cut));
  for (let hits = whole(random, 8); hits > 0 && bytes.length > 0; hits--) {
    const at =
      random.uniform() < 0.5
        ? bytes.length - 1 - whole(random, Math.min(200, bytes.length))
        : whole(random, Math.min(head, bytes.length));
    bytes[at] = random.uniform() < 0.3 ? pick(random, [0, 1, 0x7f, 0x80, 0xff]) : whole(random, 256);
  }
  return bytes;
}

interface Tally {
  read: number;
  refused: number;
}

function expectAnswer(
  read: () => Recording,
  { told, tally, most }: { told: string; tally: Tally; most: number },
): void {
  const began = performance.now();
  try {
    const { channels, sampleRate, sampling } = read();
    tally.read++;
    if (!(sampleRate > 0 && Number.isFinite(sampleRate) && Number.isFinite(sampling.duration)))
      throw new Error(`a rate of ${sampleRate} Hz from ${told}`);
    for (const { samples } of channels) {
      if (samples.length > most) throw new Error(`${samples.length} samples from ${told}`);
      if (!samples.every(Number.isFinite)) throw new Error(`a sample that is no number from ${told}`);
    }
  } catch (error) {
    if (!(error instanceof RecordingError))
      throw new Error(`${String(error)} from ${told}`, { cause: error });
    tally.refused++;
    if (error.place.line === undefined && error.place.offset === undefined)
      throw new Error(`refused without a place: ${error.message} from ${told}`, { cause: error });
  }
  const spent = performance.now() - began;
  if (spent > 2000) throw new Error(`${spent} ms for ${told}`);
}

describe(`damaged input, ${CASES} cases`, () => {
  it(
    'text of every shape is read or refused with a place',
    () => {
      const originals = texts();
      const tally = { read: 0, refused: 0 };
      for (let i = 0; i < TEXTS; i++) {
        const random = createRandom(i);
        const text = damagedText(originals[i % originals.length]!, random);
        // At most 20 000 missing samples are filled in, or as many as twice the rows, whatever a stamp says; a spline lays
        // irregular ones four times as dense.
        expectAnswer(() => readDelimited(text), {
          told: JSON.stringify(text),
          tally,
          most: 4 * (3 * text.length + 20_100),
        });
      }
      expect(tally.read).toBeGreaterThan(0.2 * TEXTS);
      expect(tally.refused).toBeGreaterThan(0.05 * TEXTS);
    },
    TIME,
  );

  it(
    'WAV files of every kind are read or refused with a place',
    () => {
      const originals = [...wavFixtures.files, ...oddFixtures.files].map(
        ({ base64 }) => new Uint8Array(Buffer.from(base64, 'base64')),
      );
      const tally = { read: 0, refused: 0 };
      for (let i = 0; i < WAVES; i++) {
        const bytes = damagedBytes(originals[i % originals.length]!, createRandom(1e6 + i), 80);
        expectAnswer(() => readWav(bytes), { told: `WAV case ${i}`, tally, most: 8 * bytes.length });
      }
      expect(tally.read).toBeGreaterThan(0.1 * WAVES);
      expect(tally.refused).toBeGreaterThan(0.1 * WAVES);
    },
    TIME,
  );

  it(
    'zips are read or refused with a place',
    () => {
      const originals = zipFixtures.files.map(({ base64 }) => new Uint8Array(Buffer.from(base64, 'base64')));
      const tally = { read: 0, refused: 0 };
      for (let i = 0; i < ZIPS; i++) {
        const bytes = damagedBytes(originals[i % originals.length]!, createRandom(2e6 + i), 3000);
        expectAnswer(() => readZip(bytes, { mostBytes: 1e6 }), { told: `zip case ${i}`, tally, most: 1e6 });
      }
      expect(tally.read).toBeGreaterThan(0.02 * ZIPS);
      expect(tally.refused).toBeGreaterThan(0.1 * ZIPS);
    },
    TIME,
  );

  it('any bytes are named and decoded', () => {
    for (let i = 0; i < 0.01 * CASES; i++) {
      const random = createRandom(3e6 + i);
      const bytes = Uint8Array.from({ length: whole(random, 300) }, () => whole(random, 256));
      expect(sniffFile(bytes).advice).not.toBe('');
      expect(typeof decodeText(bytes)).toBe('string');
    }
  });
});
