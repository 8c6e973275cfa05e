/**
 * Standard error of a root-mean-square magnitude m that was read as √(power − noise) from averaged segments.
 *
 * var m² = (noise² + 2 noise m²) / K; for a strong sine that is √(noise / 2K), for none it is what noise alone would feign.
 *
 * @param magnitude - m, unit
 * @param noise - mean square of the noise on the line, unit², and K, the number of independent segments
 */
export function magnitudeError(
  magnitude: number,
  { noise, averages }: { noise: number; averages: number },
): number {
  const square = magnitude * magnitude;
  const deviation = Math.sqrt((noise * noise + 2 * noise * square) / averages);
  return deviation === 0 ? 0 : deviation / (2 * Math.sqrt(Math.max(square, deviation)));
}
