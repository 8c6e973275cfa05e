/**
 * Brings an element to the top of the nearest box that scrolls, and moves nothing else: `scrollIntoView` would also
 * scroll the frame of the page out from under its fixtures.
 *
 * @param element - in any shadow tree
 */
export function scrollToTop(element: Element): void {
  const box = scrollingBox(element);
  const top = box === document.scrollingElement ? 0 : box.getBoundingClientRect().top;
  box.scrollTop += element.getBoundingClientRect().top - top;
}

function scrollingBox(element: Element): Element {
  for (let above = parentOf(element); above; above = parentOf(above)) {
    const flows = /auto|scroll/.test(getComputedStyle(above).overflowY);
    if (flows && above.scrollHeight > above.clientHeight) return above;
  }
  return document.scrollingElement ?? document.documentElement;
}

/** The parent as laid out: slots and shadow hosts count. */
function parentOf(element: Element): Element | undefined {
  const parent = element.assignedSlot ?? element.parentElement;
  if (parent) return parent;
  const root = element.getRootNode();
  return root instanceof ShadowRoot ? root.host : undefined;
}
