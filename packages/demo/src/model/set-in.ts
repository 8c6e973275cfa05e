/**
 * A copy of plain data with one value of it changed; what lies off the path is shared with the original.
 *
 * @param data - plain objects and lists
 * @param path - as a fault of the core writes it: `shafts[1].supports[0].at`
 * @param value - the new value; undefined takes the property away
 */
export function setIn<Data>(data: Data, path: string, value: unknown): Data {
  return change(data, stepsOf(path), value) as Data;
}

/** The value at a path, or undefined. */
export function getIn(data: unknown, path: string): unknown {
  return stepsOf(path).reduce<unknown>(
    (place, step) =>
      typeof place === 'object' && place !== null ? (place as Record<string, unknown>)[step] : undefined,
    data,
  );
}

function stepsOf(path: string): string[] {
  return path.split(/[.[\]]+/).filter((step) => step !== '');
}

function change(data: unknown, [step, ...rest]: readonly string[], value: unknown): unknown {
  if (step === undefined) return value;
  if (Array.isArray(data)) {
    const items: unknown[] = data;
    return items.map((item, index) => (String(index) === step ? change(item, rest, value) : item));
  }
  const fields = (data ?? {}) as Record<string, unknown>;
  const next = change(fields[step], rest, value);
  const others = Object.fromEntries(Object.entries(fields).filter(([key]) => key !== step));
  if (next === undefined) return others;
  return step in fields ? { ...fields, [step]: next } : { ...others, [step]: next };
}
