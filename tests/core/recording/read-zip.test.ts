import { describe, expect, it } from 'vitest';
import { readZip, RecordingError, type ReadZipOptions, type Recording } from '@sternline/core';
import fixtures from '../../reference/recording/zip.json';

function bytesOf(base64: string): Uint8Array {
  return new Uint8Array(Buffer.from(base64, 'base64'));
}

function refused(bytes: Uint8Array, options?: ReadZipOptions): RecordingError {
  try {
    readZip(bytes, options);
  } catch (error) {
    if (error instanceof RecordingError) return error;
    throw error;
  }
  throw new Error('was read');
}

function expectAxes({ channels }: Recording, axes: readonly (readonly number[])[]): void {
  expect(channels.map(({ samples }) => Array.from(samples))).toEqual(axes);
}

const phone = bytesOf(fixtures.files[0]!.base64);

/** A copy with one byte changed. */
function changed(bytes: Uint8Array, place: number, value: number): Uint8Array {
  const copy = bytes.slice();
  copy[place < 0 ? copy.length + place : place] = value;
  return copy;
}

/** Where the directory entry of a file begins: its name stands twice, the second time there. */
function entryOf(bytes: Uint8Array, name: string): number {
  return Buffer.from(bytes).lastIndexOf(name) - 46;
}

describe('readZip on zips of an independent writer (tests/reference/recording/make_zip.py)', () => {
  it.each(fixtures.files)('$name', ({ base64, entry, axes }) => {
    const recording = readZip(bytesOf(base64));
    // What was written with four places is read to the last bit; 0.01 s steps give 100 Hz to the rounding of a fit.
    expectAxes(recording, axes);
    expect(recording.sampleRate).toBeCloseTo(fixtures.rate, 9);
    expect(recording.sampling.entries![0]).toBe(entry);
    expect(recording.sampling.notes[0]).toContain(`"${entry}" was read from the zip`);
  });

  it('offers the other files, and reads the one that is asked for', () => {
    const { sampling } = readZip(phone);
    expect(sampling.entries).toEqual([
      'Accelerometer.csv',
      'trial/Linear Acceleration.csv',
      'Gyroscope.csv',
      'Location.csv',
      'Metadata.csv',
    ]);
    const gyroscope = readZip(phone, { entry: 'gyroscope.csv' });
    expectAxes(gyroscope, fixtures.gyroscope);
    expect(gyroscope.channels[0]!.unit).toBe('rad/s');
    expectAxes(readZip(phone, { sensor: 'rotation' }), fixtures.gyroscope);
  });

  it('names the recording by its file or as it is told', () => {
    expect(readZip(phone).name).toBe('Accelerometer');
    expect(readZip(phone, { name: 'third run' }).name).toBe('third run');
    expect(
      readZip(phone.buffer.slice(phone.byteOffset, phone.byteOffset + phone.length) as ArrayBuffer).name,
    ).toBe('Accelerometer');
  });
});

describe('readZip refuses, with a place and a remedy', () => {
  it('what is no recording', () => {
    expect(refused(bytesOf(fixtures.others.workbook)).message).toBe(
      'readZip: byte 55: this is a spreadsheet workbook (xlsx). Save the sheet as CSV.',
    );
    expect(refused(bytesOf(fixtures.others.pictures)).message).toBe(
      'readZip: byte 0: none of the 2 files in the zip looks like a recording ("one.jpg" and "two.png"). Export the recording again, as CSV.',
    );
    expect(refused(Uint8Array.from([1, 2, 3, 4, 5])).code).toBe('not-zip');
  });

  it('a file that is not there', () => {
    const fault = refused(phone, { entry: 'compass.csv' });
    expect(fault.code).toBe('no-such-entry');
    expect(fault.message).toContain('Gyroscope.csv');
  });

  it('a locked file', () => {
    const place = entryOf(phone, 'Accelerometer.csv');
    // The name with __MACOSX before it comes last; its entry is not the one that is read.
    const entry = entryOf(phone.subarray(0, place), 'Accelerometer.csv');
    const fault = refused(changed(phone, entry + 8, 1));
    expect(fault.code).toBe('encrypted');
    expect(fault.message).toContain('"Accelerometer.csv" is locked with a password');
    expect(refused(changed(phone, entry + 10, 12)).message).toContain('method 12');
  });

  it('a file that reads as nothing, and tells of it where another is read instead', () => {
    const stored = bytesOf(fixtures.files[1]!.base64);
    const recording = readZip(stored, { sensor: 'acceleration' });
    expect(recording.sampling.notes.join(' ')).not.toContain('passed over');
    const fault = refused(stored, { entry: 'Location.csv' });
    expect(fault.code).toBe('positions');
    expect(fault.message).toMatch(/^readZip: line 1: in "Location.csv": the columns are/);
  });

  it('a zip that is cut off, wherever it is cut', () => {
    for (let length = 4; length < phone.length; length += 97) {
      const fault = refused(phone.subarray(0, length));
      expect(fault.code).toBe('not-zip');
      expect(fault.place.offset).toBe(length);
    }
  });

  it('a file whose bytes were changed on the way', () => {
    const stored = bytesOf(fixtures.files[1]!.base64);
    const place = Buffer.from(stored).indexOf(
      'seconds_elapsed,x',
      Buffer.from(stored).indexOf('Accelerometer.csv'),
    );
    const fault = refused(changed(stored, place + 400, 0x39), { entry: 'Accelerometer.csv' });
    expect(fault.code).toBe('not-zip');
    expect(fault.message).toContain('is damaged in the zip');
  });

  it('more bytes than are allowed, whether the zip states them or lies', () => {
    const bomb = bytesOf(fixtures.others.bomb);
    const options = { mostBytes: 1_000_000 };
    expect(refused(bomb, options).message).toContain('unpacks to more than 0.954 MiB');
    const entry = entryOf(bomb, 'Accelerometer.csv');
    // States 1000 bytes instead of thirty million.
    const lying = changed(
      changed(changed(changed(bomb, entry + 24, 0xe8), entry + 25, 3), entry + 26, 0),
      entry + 27,
      0,
    );
    expect(refused(lying, options).message).toContain('is damaged in the zip');
  });

  it('arguments out of their domain', () => {
    expect(() => readZip('x' as unknown as Uint8Array)).toThrow(
      'readZip: bytes must be a Uint8Array or an ArrayBuffer, got "x"',
    );
    expect(() => readZip(phone, { mostBytes: 0 })).toThrow(
      'readZip: mostBytes must be a finite number greater than 0, got 0',
    );
  });
});
