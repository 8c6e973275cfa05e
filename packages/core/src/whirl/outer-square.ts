/** The matrix of factor · (Σ wᵢ qᵢ)². */
export function outerSquare(weights: readonly number[], factor: number): Float64Array {
  const size = weights.length;
  const square = new Float64Array(size * size);
  for (let place = 0; place < square.length; place++) {
    const row = Math.floor(place / size);
    square[place] = factor * (weights[row] ?? 0) * (weights[place - row * size] ?? 0);
  }
  return square;
}
