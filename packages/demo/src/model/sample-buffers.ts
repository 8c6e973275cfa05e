/**
 * The buffers of all typed arrays in a piece of plain data, each once, to be handed to another thread.
 *
 * @param value - objects, lists and typed arrays, nested
 * @returns the buffers
 */
export function sampleBuffers(value: unknown): ArrayBuffer[] {
  const found = new Set<ArrayBuffer>();
  collect(value, found);
  return [...found];
}

function collect(value: unknown, found: Set<ArrayBuffer>): void {
  if (typeof value !== 'object' || value === null) return;
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer) found.add(value.buffer);
    return;
  }
  for (const part of Object.values(value)) collect(part, found);
}
