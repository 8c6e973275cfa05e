/** Why a recording could not be read. */
export type RecordingErrorCode =
  | 'empty'
  | 'no-rows'
  | 'too-short'
  | 'not-text'
  | 'no-acceleration'
  | 'positions'
  | 'spectrum'
  | 'no-such-column'
  | 'no-such-sensor'
  | 'needs-sample-rate'
  | 'needs-time-unit'
  | 'unknown-unit'
  | 'ragged'
  | 'bad-time'
  | 'bad-values'
  | 'bad-json'
  | 'not-wav'
  | 'compressed'
  | 'bad-header'
  | 'unsupported'
  | 'not-zip'
  | 'encrypted'
  | 'no-such-entry'
  | 'too-large';

/** Where in the file the fault stands: 1-based line and column of a text, 0-based offset of a byte. */
export interface FilePlace {
  readonly line?: number;
  readonly column?: number;
  readonly offset?: number;
}

interface Fault extends FilePlace {
  readonly code: RecordingErrorCode;
  /** What was found, a sentence. */
  readonly found: string;
  /** What to do about it, a sentence. */
  readonly remedy: string;
}

/**
 * A file that cannot be read as a recording: what was found, where, and what to do.
 *
 * @remarks The message reads `function: line 3, column 2: found. remedy.`; the parts stand in fields of their own.
 */
export class RecordingError extends Error {
  override readonly name = 'RecordingError';
  readonly code: RecordingErrorCode;
  readonly found: string;
  readonly remedy: string;
  readonly place: FilePlace;
  readonly #where: string;

  /**
   * @param where - the public function that refuses
   * @param fault - what is wrong, where, and what to do
   */
  constructor(where: string, fault: Fault) {
    super(`${where}: ${placeInWords(fault)}${fault.found} ${fault.remedy}`);
    this.#where = where;
    this.code = fault.code;
    this.found = fault.found;
    this.remedy = fault.remedy;
    this.place = {
      ...(fault.line === undefined ? {} : { line: fault.line }),
      ...(fault.column === undefined ? {} : { column: fault.column }),
      ...(fault.offset === undefined ? {} : { offset: fault.offset }),
    };
  }

  /** The same fault at a line, where its place was left open. */
  at(line: number): RecordingError {
    const open = this.place.line === undefined && this.place.offset === undefined;
    const { code, found, remedy } = this;
    return open ? new RecordingError(this.#where, { code, found, remedy, line }) : this;
  }
}

function placeInWords({ line, column, offset }: FilePlace): string {
  if (offset !== undefined) return `byte ${offset}: `;
  if (line === undefined) return '';
  return column === undefined ? `line ${line}: ` : `line ${line}, column ${column}: `;
}
