import type { SymmetricBand } from './types.js';

/** A small symmetric matrix and the rows of the large one that it belongs to. */
export interface Block {
  /** Row of the large matrix for each row of the block; a negative one is left out. */
  readonly rows: ArrayLike<number>;
  /** Row by row, square. */
  readonly entries: ArrayLike<number>;
}

/** Adds a block to a matrix under assembly: the one place that fills a band. */
export function addBlock({ halfBandwidth, values }: SymmetricBand, { rows, entries }: Block): void {
  const size = rows.length;
  for (let i = 0; i < size; i++) {
    const row = rows[i] ?? -1;
    if (row < 0) continue;
    for (let j = 0; j < size; j++) {
      const column = rows[j] ?? -1;
      if (column < 0 || column > row) continue;
      const place = row * (halfBandwidth + 1) + halfBandwidth - row + column;
      values[place] = (values[place] ?? 0) + (entries[i * size + j] ?? 0);
    }
  }
}
