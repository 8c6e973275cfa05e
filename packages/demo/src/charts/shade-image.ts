import type { MapShades } from './map-shades.js';

/**
 * Shades as a picture for a mask: white where ink is, black where paper is, so that ink and paper keep the page's own colours.
 *
 * @param shades - 0 … 255, row by row
 * @returns the address of a PNG picture, within itself
 */
export function shadeImage({ columns, rows, shade }: MapShades): string {
  const canvas = document.createElement('canvas');
  canvas.width = columns;
  canvas.height = rows;
  const context = canvas.getContext('2d');
  if (!context) return '';
  const pixels = context.createImageData(columns, rows);
  shade.forEach((value, index) => {
    pixels.data.set([value, value, value, 255], 4 * index);
  });
  context.putImageData(pixels, 0, 0);
  return canvas.toDataURL();
}
