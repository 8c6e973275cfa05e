/** A complex number. Its few operations stand together in this file, like those of a type of the language. */
export type Complex = readonly [real: number, imaginary: number];

export function plus([a, b]: Complex, [c, d]: Complex): Complex {
  return [a + c, b + d];
}

export function minus([a, b]: Complex, [c, d]: Complex): Complex {
  return [a - c, b - d];
}

export function times([a, b]: Complex, [c, d]: Complex): Complex {
  return [a * c - b * d, a * d + b * c];
}

export function over([a, b]: Complex, [c, d]: Complex): Complex {
  const square = c * c + d * d;
  return [(a * c + b * d) / square, (b * c - a * d) / square];
}

export function scaled([a, b]: Complex, factor: number): Complex {
  return [a * factor, b * factor];
}

export function magnitude([a, b]: Complex): number {
  return Math.sqrt(a * a + b * b);
}
