/** A chunk of a RIFF file. */
export interface Chunk {
  readonly id: string;
  readonly start: number;
  /** As the header writes it, or as ds64 corrects it. */
  readonly size: number;
}

/** The size that says that ds64 holds it, or that nobody knew it. */
export const UNKNOWN_SIZE = 0xffffffff;
const MOST_CHUNKS = 10_000;

/** A file and the order of its bytes: RIFX writes the high byte first. */
export interface Wave {
  readonly view: DataView;
  readonly littleEndian: boolean;
}

/** What a walk over the chunks found. */
export interface Found {
  readonly format: Chunk | undefined;
  readonly data: Chunk | undefined;
  /** Place after the data chunk, by its stated size. */
  readonly after: number;
  /** ds64 gave the sizes. */
  readonly wide: boolean;
}

/** Walks over the chunks to the format and the sound. */
export function findChunks(wave: Wave): Found {
  const { view, littleEndian } = wave;
  let format: Chunk | undefined;
  let data: Chunk | undefined;
  let wideData: number | undefined;
  let position = 12;
  for (let count = 0; position + 8 <= view.byteLength && count < MOST_CHUNKS; count++) {
    const id = nameAt(view, position);
    const written = view.getUint32(position + 4, littleEndian);
    const start = position + 8;
    if (id === 'ds64') wideData = wideSize(wave, start) ?? wideData;
    const open = id === 'data' && written === UNKNOWN_SIZE;
    const stated = open ? (wideData ?? written) : written;
    const size = id === 'fmt ' ? formatSize(wave, { start, stated }) : stated;
    if (id === 'fmt ' && !format) format = { id, start, size };
    if (id === 'data' && !data) data = { id, start, size };
    if (data && format) break;
    position = nextChunk(view, start + size);
  }
  return {
    format,
    data,
    after: data ? data.start + data.size : view.byteLength,
    wide: wideData !== undefined,
  };
}

/** The length of the sound in 64 bits, out of the chunk that holds it. */
function wideSize({ view, littleEndian }: Wave, start: number): number | undefined {
  return start + 16 <= view.byteLength ? Number(view.getBigUint64(start + 8, littleEndian)) : undefined;
}

/** Sizes in which a format is written: with and without its bits, its extension's length, and an extension. */
const FORMAT_SIZES = [16, 18, 40, 14];

/** A format chunk that states a wrong length is mended where a chunk of sound or of facts follows a usual one. */
function formatSize({ view }: Wave, { start, stated }: { start: number; stated: number }): number {
  const follows = (size: number): boolean =>
    /^(data|fact|LIST|PEAK|bext|JUNK)$/.test(nameAt(view, start + size));
  if (isChunkName(nameAt(view, start + stated)) || isChunkName(nameAt(view, start + stated + 1)))
    return stated;
  return FORMAT_SIZES.find(follows) ?? stated;
}

/** Where the next chunk begins: at an even place, unless the writer forgot the padding. */
export function nextChunk(view: DataView, end: number): number {
  if (end % 2 === 0) return end;
  return isChunkName(nameAt(view, end)) && !isChunkName(nameAt(view, end + 1)) ? end : end + 1;
}

function isChunkName(text: string): boolean {
  return /^[\u0020-\u007e]{4}$/.test(text);
}

/** The letters at a place of the file. */
export function nameAt(view: DataView, start: number, length = 4): string {
  let text = '';
  for (let i = start; i < Math.min(start + length, view.byteLength); i++)
    text += String.fromCharCode(view.getUint8(i));
  return text;
}

/** True where nothing but whole chunks follow to the end. */
export function chunksFollow({ view, littleEndian }: Wave, start: number): boolean {
  let position = start;
  for (let count = 0; position + 8 <= view.byteLength; count++) {
    if (count > MOST_CHUNKS || !isChunkName(nameAt(view, position))) return false;
    position = nextChunk(view, position + 8 + view.getUint32(position + 4, littleEndian));
  }
  return position <= view.byteLength + 1;
}
