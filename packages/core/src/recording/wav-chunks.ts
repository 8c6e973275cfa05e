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
  const { view } = wave;
  let format: Chunk | undefined;
  let data: Chunk | undefined;
  let wide: number | undefined;
  let position = 12;
  for (let count = 0; position + 8 <= view.byteLength && count < MOST_CHUNKS; count++) {
    const chunk = readChunk(wave, { position, wide });
    if (chunk.id === 'ds64') wide = wideSize(wave, chunk.start) ?? wide;
    if (chunk.id === 'fmt ') format ??= chunk;
    if (chunk.id === 'data') data ??= chunk;
    if (data && format) break;
    position = nextChunk(view, chunk.start + chunk.size);
  }
  return { format, data, after: data ? data.start + data.size : view.byteLength, wide: wide !== undefined };
}

function readChunk(wave: Wave, { position, wide }: { position: number; wide: number | undefined }): Chunk {
  const id = nameAt(wave.view, position);
  const start = position + 8;
  const written = wave.view.getUint32(position + 4, wave.littleEndian);
  const stated = id === 'data' && written === UNKNOWN_SIZE ? (wide ?? written) : written;
  return { id, start, size: id === 'fmt ' ? formatSize(wave, { start, stated }) : stated };
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
