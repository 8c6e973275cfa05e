import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decodeText,
  readDelimited,
  RecordingError,
  type ReadDelimitedOptions,
  type Recording,
} from '@sternline/core';

/*
 * Every file here is written from one formula, so what must come out is known without the reader:
 * three axes in m/s² at 200 Hz, 0.9 m/s² at 37 Hz on y, gravity on z.
 */
const RATE = 200;
const ROWS = 400;
const turn = (hertz: number, i: number): number => 2 * Math.PI * hertz * (i / RATE);
const X = Array.from({ length: ROWS }, (_, i) => 0.4 * Math.sin(turn(23, i)));
const Y = Array.from(
  { length: ROWS },
  (_, i) => 0.9 * Math.cos(turn(37, i)) + 0.05 * Math.sin(turn(61.3, i)),
);
const Z = Array.from({ length: ROWS }, (_, i) => 9.81 + 0.3 * Math.sin(turn(37, i) + 1));

interface Shape {
  readonly head?: string;
  readonly separator?: string;
  readonly stamp?: (i: number) => string;
  readonly figure?: (value: number) => string;
  readonly row?: (cells: string[], i: number) => string[];
  readonly end?: string;
}

const fixed = (digits: number) => (value: number) => value.toFixed(digits);
const comma = (text: string): string => text.replace('.', ',');

function write({
  head = 't,ax,ay,az',
  separator = ',',
  stamp = (i) => (i / RATE).toFixed(4),
  figure = fixed(4),
  row = (cells) => cells,
  end = '\n',
}: Shape): string {
  const rows = X.map((x, i) => row([stamp(i), figure(x), figure(Y[i]!), figure(Z[i]!)], i).join(separator));
  return [...(head === '' ? [] : [head]), ...rows].join(end) + end;
}

/** The three axes within half a unit of the last digit written (in m/s²). */
function expectAxes(recording: Recording, tolerance = 0.50001e-4): void {
  expect(recording.channels.map(({ name, unit }) => [name, unit])).toEqual([
    ['x', 'm/s²'],
    ['y', 'm/s²'],
    ['z', 'm/s²'],
  ]);
  for (const [k, axis] of [X, Y, Z].entries()) {
    expect(recording.channels[k]!.samples).toHaveLength(ROWS);
    axis.forEach((value, i) => {
      expect(Math.abs(recording.channels[k]!.samples[i]! - value), `axis ${k} row ${i}`).toBeLessThanOrEqual(
        tolerance,
      );
    });
  }
}

/** Hz: three millionths of the rate; stamps here are exact to 0.1 ms over 2 s. */
const RATE_TOLERANCE = 6e-4;

function refused(text: string, options?: ReadDelimitedOptions): RecordingError {
  try {
    readDelimited(text, options);
  } catch (error) {
    if (error instanceof RecordingError) return error;
    throw error;
  }
  throw new Error('was read');
}

const roles = (recording: Recording): string[] => recording.sampling.columns.map(({ role }) => role);
const notes = (recording: Recording): string => recording.sampling.notes.join('\n');

describe('readDelimited takes the shapes in which loggers write', () => {
  const g = (value: number): string => (value / 9.80665).toFixed(6);
  const iso = (i: number): string => `2026-03-14T10:00:0${(i / RATE).toFixed(6)}Z`;
  it.each<[string, string, number?]>([
    ['plain', write({})],
    [
      'semicolons and decimal commas',
      write({
        head: 'Zeit (s);Beschl. x (m/s²);Beschl. y (m/s²);Beschl. z (m/s²)',
        separator: ';',
        stamp: (i) => comma((i / RATE).toFixed(4)),
        figure: (value) => comma(value.toFixed(4)),
        end: '\r\n',
      }),
    ],
    ['tabs', write({ head: 'time\tx\ty\tz', separator: '\t' })],
    ['strokes', write({ head: 'time|x|y|z', separator: '|' })],
    [
      'spaces in uneven runs',
      write({
        head: 'time  x   y z',
        separator: '   ',
        row: (cells, i) => (i % 2 === 0 ? ['', ...cells] : cells),
      }),
    ],
    ['commas with spaces', write({ head: 'time, x, y, z', separator: ', ' })],
    ['old line ends', write({ end: '\r' })],
    [
      'epoch in nanoseconds',
      write({ head: 'time,x,y,z', stamp: (i) => String(1790000000000000000n + BigInt(i) * 5000000n) }),
    ],
    [
      'epoch in milliseconds',
      write({ head: 'timestamp,x,y,z', stamp: (i) => String(1790000000000 + 5 * i) }),
    ],
    [
      'epoch in seconds',
      write({ head: 'timestamp,x,y,z', stamp: (i) => (1790000000 + i / RATE).toFixed(3) }),
    ],
    ['ISO dates', write({ stamp: iso })],
    [
      'dates as a spreadsheet writes them',
      write({
        head: 'Datum;ax;ay;az',
        separator: ';',
        stamp: (i) => `14.03.2026 10:00:0${comma((i / RATE).toFixed(3))}`,
        figure: (value) => comma(value.toFixed(4)),
      }),
    ],
    [
      'clock times',
      write({
        stamp: (i) => `23:59:59.${String(i * 5).padStart(3, '0')}`,
        row: (cells, i) =>
          i < RATE ? cells : [`00:00:00.${String((i - RATE) * 5).padStart(3, '0')}`, ...cells.slice(1)],
      }),
    ],
    ['milliseconds in the header', write({ head: 't_ms,x,y,z', stamp: (i) => String(5 * i) })],
    ['milliseconds without a unit', write({ stamp: (i) => String(5 * i) })],
    ['microseconds', write({ head: 'time (µs),x,y,z', stamp: (i) => String(5000 * i) })],
    ['g in the header', write({ head: 'time,x [g],y [g],z [g]', figure: g }), 0.51e-5],
    ['g in the name', write({ head: 'time_s,x_g,y_g,z_g', figure: g }), 0.51e-5],
    [
      'g in the head',
      write({
        head: '# bench\n# rate: 200\n# unit: g\n\ntime_s,x,y,z,note',
        figure: g,
        row: (cells) => [...cells, ''],
      }),
      0.51e-5,
    ],
    ['g without a word', write({ head: 'time,x,y,z', figure: g }), 0.51e-5],
    [
      'mg in a units row',
      write({
        head: 'Time,AccX,AccY,AccZ\nms,mg,mg,mg',
        stamp: (i) => (5 * i).toFixed(1),
        figure: (value) => (value / 9.80665e-3).toFixed(3),
      }),
      0.51e-5,
    ],
    [
      'sensor counts',
      write({ figure: (value) => String(Math.round((value / 9.80665) * 16384)) }),
      9.80665 / 32768 + 1e-9,
    ],
    [
      'quotes and exponents',
      write({
        head: '"Time (s)","Acceleration x (m/s^2)","Acceleration y (m/s^2)","Acceleration z (m/s^2)"',
        stamp: (i) => (0.042 + i / RATE).toExponential(9),
        figure: (value) => `"${value.toExponential(9)}"`,
      }),
      1e-8,
    ],
    ['a sep line', write({ head: 'sep=;\n"t";"x";"y";"z"', separator: ';' })],
    [
      'thousands in the time',
      write({ head: 't;x;y;z', separator: ';', stamp: (i) => `1,00${(i / RATE).toFixed(4)}` }),
    ],
    [
      'points for thousands',
      write({
        head: 't;x;y;z',
        separator: ';',
        stamp: (i) => `1.00${comma((i / RATE).toFixed(4))}`,
        figure: (value) => comma(value.toFixed(4)),
      }),
    ],
    [
      'several head lines',
      write({ head: 'Logger 7\nDate: today; place: bench\n\nTime;AX;AY;AZ', separator: ';' }),
    ],
    ['a header within a comment', write({ head: '# made by hand\n# t,ax,ay,az' })],
    [
      'a comment among the rows',
      write({ row: (cells, i) => (i === 200 ? [`# mark\n${cells[0]!}`, ...cells.slice(1)] : cells) }),
    ],
    ['no header', write({ head: '' })],
    [
      'JSON lines',
      X.map((x, i) => JSON.stringify({ t: i / RATE, ax: x, ay: Y[i], az: Z[i] })).join('\n'),
      1e-12,
    ],
    [
      'a JSON list',
      JSON.stringify(
        X.map((x, i) => ({ t: i / RATE, acc: { x, y: Y[i], z: Z[i] } })),
        null,
        1,
      ),
      1e-12,
    ],
    ['JSON lists of columns', JSON.stringify({ t: X.map((_, i) => i / RATE), x: X, y: Y, z: Z }), 1e-12],
    ['a JSON list of lists', JSON.stringify(X.map((x, i) => [i / RATE, x, Y[i], Z[i]])), 1e-12],
  ])('%s', (_, text, tolerance) => {
    const recording = readDelimited(text);
    expect(Math.abs(recording.sampleRate - RATE)).toBeLessThan(RATE_TOLERANCE);
    expectAxes(recording, tolerance);
    expect(recording.sampling).toMatchObject({
      kind: 'motion',
      rateFrom: 'stamps',
      gaps: [],
      clipping: [],
      timeBase: 'counts',
      gravity: 'present',
    });
  });

  it.each([
    ['French', 'Temps (s);Accélération x (m/s²);Accélération y (m/s²);Accélération z (m/s²)'],
    ['Spanish', 'Tiempo (s);Aceleración x (m/s²);Aceleración y (m/s²);Aceleración z (m/s²)'],
    ['Italian', 'Tempo (s);Accelerazione x (m/s²);Accelerazione y (m/s²);Accelerazione z (m/s²)'],
    ['Dutch', 'Tijd (s);Versnelling x (m/s²);Versnelling y (m/s²);Versnelling z (m/s²)'],
    ['German', 'Zeit (s);Beschleunigung x (m/s²);Beschleunigung y (m/s²);Beschleunigung z (m/s²)'],
  ])('%s headers', (_, head) => {
    const recording = readDelimited(write({ head, separator: ';' }));
    expect(roles(recording)).toEqual(['time', 'x', 'y', 'z']);
    expectAxes(recording);
  });

  it('takes columns by their names, not their places, and one time of two', () => {
    const recording = readDelimited(
      write({
        head: 'time,seconds_elapsed,z,y,x',
        row: ([stamp, x, y, z], i) => [
          String(1790000000000000000n + BigInt(i) * 5000000n),
          stamp!,
          z!,
          y!,
          x!,
        ],
      }),
    );
    expectAxes(recording);
    expect(roles(recording)).toEqual(['unused', 'time', 'z', 'y', 'x']);
    expect(notes(recording)).toContain('"time" is a second time column and was not used.');
  });

  it.each([
    ['by name', 't,ax,ay,az,aT', 'named as the magnitude of the axes'],
    ['by arithmetic', 't,ax,ay,az,q', 'equals the root of the sum of the axes’ squares'],
  ])('knows a magnitude %s and reads no axis from it', (_, head, reason) => {
    const recording = readDelimited(
      write({ head, row: (cells, i) => [...cells, Math.hypot(X[i]!, Y[i]!, Z[i]!).toFixed(4)] }),
    );
    expectAxes(recording);
    expect(recording.sampling.columns[4]).toMatchObject({ role: 'magnitude', reason });
  });

  it('reads one sensor of two that share a file row by row, and offers the other by name', () => {
    const text = write({
      head: 'sensor,t,x,y,z',
      row: (cells, i) => [
        'acc',
        ...cells,
        ...(i % 2 === 0 ? [`0\ngyro,${(i / RATE + 0.001).toFixed(4)},0.1,${i % 7},0.3`] : []),
      ],
    }).replace(/,0\n/g, '\n');
    const recording = readDelimited(text);
    expectAxes(recording);
    expect(recording.sampling.sensors).toEqual([
      { name: 'acc', quantity: 'acceleration' },
      { name: 'gyro', quantity: 'rotation' },
    ]);
    expect(notes(recording)).toContain('"gyro"; options.sensor reads it by that name');
    const gyro = readDelimited(text, { sensor: 'gyro' });
    expect(gyro.sampleRate).toBeCloseTo(100, 3);
    expect(gyro.channels[1]!.unit).toBe('rad/s');
    expect([...gyro.channels[1]!.samples.slice(0, 4)]).toEqual([0, 2, 4, 6]);
    expect(refused(text, { sensor: 'compass' }).code).toBe('no-such-sensor');
  });

  it('reads the turning rate of a file with both sensors side by side where it is asked for', () => {
    const text = write({
      head: 't,ax,ay,az,gx (deg/s),gy (deg/s),gz (deg/s)',
      row: (cells, i) => [...cells, '180', String(i % 5), '-90'],
    });
    expectAxes(readDelimited(text));
    const turning = readDelimited(text, { sensor: 'rotation' });
    expect(turning.channels[0]!.samples[7]).toBeCloseTo(Math.PI, 12);
    expect(turning.channels[2]!.samples[7]).toBeCloseTo(-Math.PI / 2, 12);
  });

  it('reads sound, in full scale or in 16-bit whole numbers', () => {
    const rows = Array.from({ length: 300 }, (_, i) =>
      [(i / 8000).toFixed(7), String(Math.round(8192 * Math.sin(i)))].join(','),
    );
    const recording = readDelimited(['time (s),sound', ...rows].join('\n'));
    expect(recording.channels[0]).toMatchObject({ name: 'sound', unit: 'full scale' });
    expect(recording.channels[0]!.samples[1]).toBe(Math.round(8192 * Math.sin(1)) / 32768);
    expect(recording.sampling.kind).toBe('sound');
  });
});

describe('readDelimited lets the caller overrule it', () => {
  it('columns by header or place, and their unit', () => {
    const text = write({ head: 'a1;b2;c3;d4', separator: ';' });
    const recording = readDelimited(text, { columns: { time: 0, x: 'b2', y: 'C3', z: 3, unit: 'm/s^2' } });
    expectAxes(recording);
    expect(recording.sampling.columns[1]).toMatchObject({ reason: 'chosen by the caller', confidence: 1 });
    const inG = readDelimited(text, { columns: { time: 0, x: 1, unit: 'g' } });
    expect(inG.channels[0]!.samples[5]).toBeCloseTo(9.80665 * Number(X[5]!.toFixed(4)), 9);
    expect(refused(text, { columns: { x: 'zz' } }).message).toBe(
      'readDelimited: line 1: there is no column "zz"; the columns are a1, b2, c3, d4. Name one of these, or give its place counted from 0.',
    );
    expect(refused(text, { columns: { x: 1, unit: 'stone' } }).code).toBe('unknown-unit');
  });

  it('rate, time unit, gravity and name', () => {
    const given = readDelimited(write({}), { sampleRate: 100, gravity: 'removed', name: 'bench' });
    expect([given.sampleRate, given.sampling.rateFrom, given.sampling.gravity, given.name]).toEqual([
      100,
      'given',
      'removed',
      'bench',
    ]);
    const counted = write({ stamp: (i) => String(i) });
    expect(refused(counted).code).toBe('needs-time-unit');
    expect(readDelimited(counted, { timeUnit: 'ms' }).sampleRate).toBeCloseTo(1000, 6);
    expect(() => readDelimited('t,x\n', { sampleRate: 0 })).toThrow(
      'readDelimited: sampleRate must be a finite number greater than 0, got 0',
    );
    expect(() => readDelimited(7 as unknown as string)).toThrow(
      'readDelimited: text must be a string, got 7',
    );
  });

  it('a rate that only the head states', () => {
    const recording = readDelimited(write({ head: '# rate: 200 Hz\nx,y,z', row: (cells) => cells.slice(1) }));
    expect([recording.sampleRate, recording.sampling.rateFrom]).toEqual([200, 'header']);
    expectAxes(recording);
  });
});

describe('readDelimited refuses, and says what, where and what to do', () => {
  const list = (count: number, row: (i: number) => string): string =>
    Array.from({ length: count }, (_, i) => row(i)).join('\n');
  it.each<[string, string, string, string]>([
    ['nothing', ' \n\n', 'empty', 'the file is empty. Export the recording again'],
    [
      'a head alone',
      't,ax,ay,az\n',
      'no-rows',
      'there is a head (t, ax, ay, az) and no row of figures under it.',
    ],
    [
      'positions',
      `time,latitude,longitude,speed\n${list(40, (i) => `${i},54.1${i},10.2,2.0${i}`)}`,
      'positions',
      'line 1: the columns are "time", "latitude", "longitude", "speed": these are positions and speeds',
    ],
    [
      'a spectrum',
      `frequency_hz,amplitude\n${list(40, (i) => `${i / 2},0.0${i}`)}`,
      'spectrum',
      'line 1: the columns are "frequency_hz", "amplitude": this looks like a spectrum',
    ],
    [
      'no time',
      list(40, (i) => `0.1${i % 7} 0.2${i % 5} 9.8${i % 3}`),
      'needs-sample-rate',
      'Give options.sampleRate in Hz',
    ],
    [
      'a magnitude alone',
      `t,aT\n${list(40, (i) => `${i / 100},9.8${i % 10}`)}`,
      'no-acceleration',
      'A magnitude alone hides the directions',
    ],
    [
      'other quantities',
      `t,temperature,humidity\n${list(40, (i) => `${i},20.${i},5${i % 10}`)}`,
      'no-acceleration',
      'none of them is known as an acceleration',
    ],
    ['stamps that stand', `t,x,y,z\n${list(40, (i) => `5,0.1${i},0.2,9.8`)}`, 'bad-time', 'the same'],
    ['too few rows', 't,x,y,z\n0,1,2,3\n0.01,1,2,3\n', 'too-short', '2 rows'],
    ['a zip', 'PK\u0003\u0004\u0014\u0000', 'not-text', 'a zip archive or a spreadsheet file. Unpack it'],
    ['a page', '<!doctype html><html></html>', 'not-text', 'a page or XML document'],
    ['broken JSON', '[{"t": 0, "x": 1},\n{"t": 1, "x"', 'bad-json', 'line 2: the text begins as JSON'],
    ['words', 'This is a letter.\nIt has no figures.\n', 'no-rows', 'no row of figures'],
  ])('%s', (_, text, code, message) => {
    const error = refused(text);
    expect(error.code).toBe(code);
    expect(error.message).toContain(message);
    expect(error.message.startsWith('readDelimited: ')).toBe(true);
    expect(error.remedy).not.toBe('');
  });

  it('carries place, fault and remedy apart', () => {
    const error = refused('frequency_hz,amplitude\n0,1\n1,2\n2,1\n3,2\n');
    expect(error.name).toBe('RecordingError');
    expect(error.place).toEqual({ line: 1 });
    expect(error.found).toContain('looks like a spectrum');
    expect(error.remedy).toBe('Export the raw recording, with one row for each sample.');
  });
});

describe('readDelimited tells how well the recording was taken', () => {
  it('counts cells without figures and names their first lines', () => {
    const recording = readDelimited(
      write({
        row: ([t, x, y, z], i) => [
          t!,
          i % 100 === 3 ? 'error' : x!,
          i === 50 ? 'NaN' : y!,
          i === 0 ? '' : z!,
        ],
      }),
    );
    expect(recording.sampling.badCells).toEqual({ count: 6, lines: [2, 5, 52, 105, 205] });
    expect(recording.sampling.gaps).toEqual([]);
    expect(recording.channels[0]!.samples[103]).toBeCloseTo(
      (Number(X[102]!.toFixed(4)) + Number(X[104]!.toFixed(4))) / 2,
      12,
    );
  });

  it('lists a run of bad cells as a gap', () => {
    const recording = readDelimited(
      write({ row: ([t, x, y, z], i) => [t!, i >= 60 && i < 70 ? '-' : x!, y!, z!] }),
    );
    expect(recording.sampling.gaps).toEqual([{ start: 60, count: 10 }]);
  });

  it('leaves out rows of another length and says where', () => {
    const recording = readDelimited(write({ row: (cells, i) => (i === 9 ? [...cells, '1', '2'] : cells) }));
    expect(notes(recording)).toContain('1 row of another length left out (line 11).');
    expect(recording.sampling.gaps).toEqual([{ start: 9, count: 1 }]);
  });

  it('sorts rows that stand out of order', () => {
    // 7 and 400 have no common factor, so this visits every row once.
    const rows = write({}).trim().split('\n');
    const shuffled = [rows[0], ...X.map((_, i) => rows[1 + ((7 * i) % ROWS)])].join('\n');
    const recording = readDelimited(shuffled);
    expectAxes(recording);
    expect(recording.sampling.unsortedRows).toBeGreaterThan(300);
    expect(notes(recording)).toContain('were sorted by their stamps');
  });

  it('reads the longest stretch where the clock starts again', () => {
    const rows = write({}).trim().split('\n').slice(1);
    const recording = readDelimited(['t,ax,ay,az', ...rows.slice(0, 150), ...rows].join('\n'));
    expectAxes(recording);
    expect(notes(recording)).toContain('150 rows were left out');
  });

  it('leaves out rows that are there twice', () => {
    const recording = readDelimited(
      write({
        row: (cells, i) =>
          i % 40 === 7 ? [...cells.slice(0, 3), `${cells[3]!}\n${cells.join(',')}`] : cells,
      }),
    );
    expectAxes(recording);
    expect(recording.sampling.doubledRows).toBe(10);
  });

  it('tells clipping, its side and its level', () => {
    const recording = readDelimited(
      write({ row: ([t, x, y, z]) => [t!, x!, String(Math.max(-0.5, Math.min(0.5, Number(y)))), z!] }),
    );
    expect(recording.sampling.clipping.map(({ channel, level }) => [channel, level])).toEqual([
      ['y', 0.5],
      ['y', -0.5],
    ]);
    expect(recording.sampling.clipping[0]!.count).toBe(
      Y.filter((value) => Number(value.toFixed(4)) >= 0.5).length,
    );
    expect(notes(recording)).toContain('no amplitude on y is to be trusted');
  });

  it('tells a dead channel, a standstill, held rows and the step of the figures', () => {
    const dead = readDelimited(
      write({ row: ([t, , y, z], i) => [t!, '0.0', y!, i >= 200 && i < 240 ? '9.8' : z!] }),
    );
    expect(dead.sampling.stuck).toEqual([
      { channel: 'x', start: 0, count: ROWS },
      { channel: 'z', start: 200, count: 40 },
    ]);
    const held = readDelimited(
      write({ row: ([t], i) => [t!, ...[X, Y, Z].map((axis) => axis[i - (i % 2)]!.toFixed(2))] }),
    );
    expect(held.sampling.heldRows).toBeGreaterThanOrEqual(ROWS / 2);
    expect(notes(held)).toContain('the sensor is slower than the logger');
    expect(held.sampling.resolution!.map(({ step }) => step)).toEqual(
      [0.01, 0.01, 0.01].map((step) => expect.closeTo(step, 12) as number),
    );
  });

  it('knows that gravity was taken out, by header or by size', () => {
    const lying = write({ row: ([t, x, y, z]) => [t!, x!, y!, (Number(z) - 9.81).toFixed(4)] });
    expect(readDelimited(lying).sampling.gravity).toBe('removed');
    expect(
      readDelimited(
        write({
          head: 't,Linear Acceleration x (m/s²),Linear Acceleration y (m/s²),Linear Acceleration z (m/s²)',
        }),
      ).sampling.gravity,
    ).toBe('removed');
  });
});

describe('readDelimited on damaged text', () => {
  const originals = [
    write({}).slice(0, 4000),
    write({
      head: 'Zeit (s);x (g);y (g);z (g)',
      separator: ';',
      figure: (value) => comma(value.toFixed(3)),
    }).slice(0, 3000),
    write({ head: 'sensor,t,x,y,z', row: (cells, i) => [i % 3 === 0 ? 'gyro' : 'acc', ...cells] }).slice(
      0,
      4000,
    ),
    X.slice(0, 60)
      .map((x, i) => JSON.stringify({ t: i / RATE, ax: x, ay: Y[i], az: Z[i] }))
      .join('\n'),
    write({ stamp: (i) => `2026-03-14T10:00:0${(i / RATE).toFixed(6)}Z` }).slice(0, 4000),
    write({ head: '', separator: ' ' }).slice(0, 3000),
  ];
  const hit = fc.record({
    place: fc.double({ min: 0, max: 1, noNaN: true }),
    remove: fc.nat(12),
    insert: fc.oneof(
      fc.string({ maxLength: 6 }),
      fc.constantFrom(
        '\n',
        ',',
        ';',
        '"',
        '\t',
        '1e308',
        '-1e999',
        'NaN',
        '99999999999999999999',
        '{',
        '[',
        '\u0000',
        '0x1f',
        '  ',
        '00:00:0',
        '\r',
        'Infinity',
        '#',
      ),
    ),
  });

  it('reads or refuses each, and never gives a sample that is no number', () => {
    fc.assert(
      fc.property(
        fc.nat(originals.length - 1),
        fc.array(hit, { minLength: 1, maxLength: 8 }),
        (index, hits) => {
          let text = originals[index]!;
          for (const { place, remove, insert } of hits) {
            const at = Math.floor(place ** 2 * text.length);
            text = text.slice(0, at) + insert + text.slice(at + remove);
          }
          const began = performance.now();
          try {
            const { channels, sampleRate } = readDelimited(text);
            expect(sampleRate).toBeGreaterThan(0);
            expect(Number.isFinite(sampleRate)).toBe(true);
            for (const { samples } of channels) expect(samples.every(Number.isFinite)).toBe(true);
          } catch (error) {
            if (!(error instanceof RecordingError)) throw error;
          }
          expect(performance.now() - began).toBeLessThan(2000);
        },
      ),
      { numRuns: 300, seed: 20260315 },
    );
  }, 120_000);

  it('answers any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        try {
          readDelimited(text);
        } catch (error) {
          if (!(error instanceof RecordingError)) throw error;
        }
      }),
      { numRuns: 500, seed: 20260316 },
    );
  });
});

describe('decodeText', () => {
  const text = 'Zeit;x (m/s²);µ\n0,1;2;3\n'.repeat(4);
  it.each<[string, Buffer]>([
    ['UTF-8', Buffer.from(text)],
    ['UTF-8 with a mark', Buffer.from('\ufeff' + text)],
    ['UTF-16 LE with a mark', Buffer.from('\ufeff' + text, 'utf16le')],
    ['UTF-16 LE without', Buffer.from(text, 'utf16le')],
    ['UTF-16 BE with a mark', Buffer.from('\ufeff' + text, 'utf16le').swap16()],
    ['UTF-16 BE without', Buffer.from(text, 'utf16le').swap16()],
    ['Windows-1252', Buffer.from(text, 'latin1')],
  ])('%s', (_, bytes) => {
    expect(decodeText(bytes)).toBe(text);
  });

  it('refuses what is no bytes', () => {
    expect(() => decodeText('x' as unknown as Uint8Array)).toThrow(
      'decodeText: bytes must be a Uint8Array, got "x"',
    );
  });
});

describe('quotes change nothing that is read (RFC 4180, section 2, rules 5 to 7)', () => {
  const rows = Array.from({ length: 6000 }, (_, i) => [
    (i / RATE).toFixed(4),
    X[i % ROWS]!.toFixed(5),
    Y[i % ROWS]!.toFixed(5),
    'note',
  ]);
  const lay = (cells: (row: string[], i: number) => string[], end = '\n'): string =>
    [['t (s)', 'x (m/s²)', 'y (m/s²)', 'remark'], ...rows.map(cells)].map((row) => row.join(',')).join(end);
  const plain = readDelimited(lay((row) => row));
  const quote = (cell: string): string => `"${cell}"`;
  const swap = (row: string[], cell: string): string[] => [...row.slice(0, 3), cell];

  it.each<[string, string]>([
    ['every cell', lay((row) => row.map(quote))],
    ['every cell, lines ended by two characters', lay((row) => row.map(quote), '\r\n')],
    ['some cells', lay((row, i) => row.map((cell, k) => ((i + k) % 3 === 0 ? quote(cell) : cell)))],
    ['a cell with a separator', lay((row, i) => (i === 3000 ? swap(row, '"a, b"') : row.map(quote)))],
    ['a cell with a line end', lay((row, i) => (i === 3000 ? swap(row, '"a\nb"') : row.map(quote)))],
    ['a cell with a quote', lay((row, i) => (i === 3000 ? swap(row, '"a ""b"" c"') : row.map(quote)))],
    ['a quote within an open cell', lay((row, i) => (i === 3000 ? swap(row, '5" shaft') : row))],
  ])('%s', (_, text) => {
    const { channels, sampling } = readDelimited(text);
    expect(channels).toEqual(plain.channels);
    expect(channels[0]!.samples).toHaveLength(rows.length);
    expect(sampling.badCells.count).toBe(0);
  });

  it('nor the line that a bad cell is said to stand in', () => {
    const bad = (i: number): string[] => rows[i]!.map((cell, k) => quote(k === 1 ? 'bad' : cell));
    const text = lay((row, i) => (i === 5000 ? bad(i) : i === 100 ? swap(row, '"a\nb"') : row.map(quote)));
    // The head is line 1, row 0 line 2, and one cell above takes a line more.
    expect(readDelimited(text).sampling.badCells).toEqual({ count: 1, lines: [5003] });
  });
});
