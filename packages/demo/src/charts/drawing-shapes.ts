import type { DrawnJoint, Placed, Spot } from './drawing-geometry.js';

/** The transform of a shape's own frame. */
export function frame({ origin, turn }: Placed): string {
  return `translate(${origin.x},${origin.y}) rotate(${turn})`;
}

/** One blade seen from the side, reaching as far up (or down) as its phase lets it. */
export function bladePath(reach: number, hub: number): string {
  const width = hub * 0.9;
  return `M${-width / 2},0 C${-width * 1.3},${-reach * 0.5} ${-width},${-reach} 0,${-reach} C${width},${-reach} ${width * 1.1},${-reach * 0.5} ${width / 2},0 Z`;
}

/** A fork of a joint, open aft (1) or forward (−1). */
export function yokePath(radius: number, side: 1 | -1): string {
  const back = -side * radius * 1.7;
  return `M${back},${-radius * 0.55} L${-side * radius * 0.5},${-radius} L${side * radius * 0.35},${-radius} L${side * radius * 0.35},${-radius * 0.55} L${-side * radius * 0.45},${-radius * 0.5} L${-side * radius * 0.45},${radius * 0.5} L${side * radius * 0.35},${radius * 0.55} L${side * radius * 0.35},${radius} L${-side * radius * 0.5},${radius} L${back},${radius * 0.55} Z`;
}

/** A fork seen from the side while it turns: wide when its pins stand across the view, narrow when they point at the eye. */
export function forkScale(angle: number): string {
  return `scale(1,${(0.45 + 0.55 * Math.abs(Math.cos(angle))).toFixed(3)})`;
}

/** The arc between the directions before and after a joint. */
export function arcPath({ origin, turn, turnAfter }: DrawnJoint, reach: number): string {
  const at = (degrees: number) => {
    const angle = (degrees * Math.PI) / 180;
    return `${origin.x + reach * Math.cos(angle)},${origin.y + reach * Math.sin(angle)}`;
  };
  return `M${at(turn)} A${reach},${reach} 0 0 ${turnAfter > turn ? 1 : 0} ${at(turnAfter)}`;
}

/** Where a joint's angle is written: beyond its arc, on the side that the next shaft leaves free. */
export function angleLabelSpot({ origin, turn, turnAfter }: DrawnJoint, reach: number): Spot {
  const angle = (turn * Math.PI) / 180;
  return {
    x: origin.x + (reach + 8) * Math.cos(angle),
    y: origin.y + (reach + 8) * Math.sin(angle) + (turnAfter >= turn ? -5 : 15),
  };
}

/** A bent shaft in its own frame. */
export function bowPath(
  { at, displacement }: { readonly at: readonly number[]; readonly displacement: readonly number[] },
  { scale, reach }: { readonly scale: number; readonly reach: number },
): string {
  return at
    .map((place, index) => {
      const step = `${(place * scale).toFixed(1)},${(-(displacement[index] ?? 0) * reach).toFixed(1)}`;
      return `${index === 0 ? 'M' : 'L'}${step}`;
    })
    .join(' ');
}
