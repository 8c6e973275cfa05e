import type { Disc, ShaftLine } from '../line/types.js';

/**
 * The disc that is the line's propeller: of the last shaft, by its name or else the aftmost; none where the line has no
 * `propeller`.
 */
export function isPropeller(line: ShaftLine, { shaft, disc }: { shaft: number; disc: Disc }): boolean {
  if (!line.propeller || shaft !== line.shafts.length - 1) return false;
  const discs = line.shafts[shaft]?.discs ?? [];
  const named = discs.filter(({ name }) => /propeller/i.test(name));
  if (named.length > 0) return named.includes(disc);
  return disc === discs.reduce((last, other) => (other.at >= last.at ? other : last));
}
