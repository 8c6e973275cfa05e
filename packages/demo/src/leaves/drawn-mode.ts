import type { ModeShape } from '@sternline/core';
import { group, range } from 'd3';
import type { ShaftBow } from '../charts/line-drawing.js';

/** A mode shape as the drawing takes it: shaft by shaft. */
export function drawnMode({ shaft, at, displacement }: ModeShape): ShaftBow[] {
  const nodes = group(range(shaft.length), (node) => shaft[node] ?? 0);
  return [...nodes.values()].map((indices) => ({
    at: indices.map((node) => at[node] ?? 0),
    displacement: indices.map((node) => displacement[node] ?? 0),
  }));
}
