import { describe, expect, it } from 'vitest';
import { plainNote } from '../../../packages/demo/src/model/plain-note.js';

describe('plainNote', () => {
  it('leaves out what only a caller of the library can do', () => {
    expect(plainNote('No unit is given: read as m/s². Give options.columns.unit if it is another.')).toBe(
      'No unit is given: read as m/s².',
    );
    expect(plainNote('The file also holds "gyro"; options.sensor reads it by that name.')).toBe(
      'The file also holds "gyro".',
    );
  });

  it('leaves other notes as they are', () => {
    expect(plainNote('1902 rows have the same stamp as the row before.')).toBe(
      '1902 rows have the same stamp as the row before.',
    );
  });
});
