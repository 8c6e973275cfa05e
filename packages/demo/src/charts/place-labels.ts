/** A label that wants to stand at `x`, in pixels, and is `width` wide. */
export interface LabelWish {
  readonly x: number;
  readonly width: number;
}

/** Where labels may stand. */
export interface LabelRoom {
  readonly left: number;
  readonly right: number;
  /** How many rows there are. */
  readonly rows: number;
}

/** A label's middle and row; `undefined` where there is no room for it. */
export type PlacedLabel = { readonly x: number; readonly row: number } | undefined;

/**
 * Gives each label the lowest row in which it overlaps none that came before, most important first.
 *
 * @param wishes - labels, most important first
 * @param room - the strip they share
 * @returns one place each, in the order of the wishes
 */
export function placeLabels(wishes: readonly LabelWish[], room: LabelRoom): PlacedLabel[] {
  const taken: { from: number; to: number; row: number }[] = [];
  return wishes.map((wish) => {
    const half = wish.width / 2;
    const x = Math.max(room.left + half, Math.min(room.right - half, wish.x));
    for (let row = 0; row < room.rows; row++) {
      const clash = taken.some((other) => other.row === row && other.from < x + half && x - half < other.to);
      if (clash) continue;
      taken.push({ from: x - half, to: x + half, row });
      return { x, row };
    }
    return undefined;
  });
}
