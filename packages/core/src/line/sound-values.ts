/** An object within the line, and where it stands. */
export interface Place {
  readonly path: string;
  readonly value: Readonly<Record<string, unknown>>;
}

/** Reads what is right on its own, so that one bad value neither hides nor doubles the faults of others. */
export interface SoundValues {
  /** The number at this key, unless it is absent or at fault. */
  number(owner: Place, key: string): number | undefined;
  /** The text at this key, on the same terms. */
  text(owner: Place, key: string): string | undefined;
  /** The object at this key, on the same terms. */
  object(owner: Place, key: string): Place | undefined;
  /** The items of the list at this key, each with its path; undefined where there is no list or an item is no object. */
  list(owner: Place, key: string): readonly Place[] | undefined;
  /** Whether a fault was found at a path that fits. */
  faulty(pattern: RegExp): boolean;
}

/**
 * A reader of partly valid data that passes over every value already found at fault.
 *
 * @param faultyPaths - paths of the values at fault
 */
export function soundValues(faultyPaths: readonly string[]): SoundValues {
  const faulty = new Set(faultyPaths);
  const at = (owner: Place, key: string): unknown =>
    faulty.has(join(owner, key)) ? undefined : owner.value[key];
  return {
    number: (owner, key) => {
      const value = at(owner, key);
      return typeof value === 'number' ? value : undefined;
    },
    text: (owner, key) => {
      const value = at(owner, key);
      return typeof value === 'string' ? value : undefined;
    },
    object: (owner, key) => asPlace(join(owner, key), at(owner, key)),
    list: (owner, key) => {
      const value = at(owner, key);
      if (!Array.isArray(value)) return undefined;
      const items = value.map((item, index) => asPlace(`${join(owner, key)}[${index}]`, item));
      return items.every((item) => item !== undefined) ? items : undefined;
    },
    faulty: (pattern) => faultyPaths.some((path) => pattern.test(path)),
  };
}

function join(owner: Place, key: string): string {
  return owner.path === '' ? key : `${owner.path}.${key}`;
}

function asPlace(path: string, value: unknown): Place | undefined {
  return typeof value === 'object' && value !== null ? { path, value: value as Place['value'] } : undefined;
}
