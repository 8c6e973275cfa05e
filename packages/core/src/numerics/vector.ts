/** A vector in space: x, y, z. */
export type Vector3 = readonly [number, number, number];
