import { nothing } from 'lit';
import { Directive, directive, PartType, type ElementPart, type PartInfo } from 'lit/directive.js';

class PlaceDirective extends Directive {
  constructor(part: PartInfo) {
    super(part);
    if (part.type !== PartType.ELEMENT) throw new TypeError('place: part must be an element');
  }

  override render(styles: Readonly<Record<string, string>>): unknown {
    return styles;
  }

  override update({ element }: ElementPart, [styles]: [Readonly<Record<string, string>>]): unknown {
    const { style } = element as HTMLElement;
    for (const [name, value] of Object.entries(styles)) style.setProperty(name, value);
    return nothing;
  }
}

/**
 * Sets style properties of an element one by one. A style attribute, which Lit's own directive writes at first,
 * is what the page's content policy forbids.
 *
 * @example html`<div ${place({ left: '4px' })}></div>`
 */
export const place = directive(PlaceDirective);
