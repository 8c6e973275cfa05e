const INLINED = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linejoin',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
  'dominant-baseline',
  'opacity',
  'paint-order',
] as const;

/**
 * A drawing of the page as a file of its own: the styles that the page gave it are written into it.
 *
 * @param drawing - the drawing as it stands in the page
 * @param background - CSS colour behind it
 * @returns the text of an SVG file
 */
export function figureSvg(drawing: SVGSVGElement, background: string): string {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  const originals = drawing.querySelectorAll<SVGElement>('*');
  copy.querySelectorAll<SVGElement>('*').forEach((element, index) => {
    const original = originals[index];
    if (original) inlineStyle(original, element);
  });
  copy.querySelectorAll('[data-passing]').forEach((element) => {
    element.remove();
  });
  const { width, height } = drawing.viewBox.baseVal;
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  copy.prepend(sheet(background));
  return new XMLSerializer().serializeToString(copy);
}

function inlineStyle(from: SVGElement, to: SVGElement): void {
  const style = getComputedStyle(from);
  for (const name of INLINED) {
    const value = style.getPropertyValue(name);
    if (value) to.setAttribute(name, value);
  }
  to.removeAttribute('class');
}

function sheet(colour: string): SVGRectElement {
  const rect = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  rect.setAttribute('width', '100%');
  rect.setAttribute('height', '100%');
  rect.setAttribute('fill', colour);
  return rect;
}
