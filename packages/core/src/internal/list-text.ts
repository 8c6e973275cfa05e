/** 'a', 'a and b', 'a, b and c'. */
export function listText(items: readonly (string | number)[]): string {
  const last = items.at(-1);
  if (last === undefined) return '';
  return items.length === 1 ? String(last) : `${items.slice(0, -1).join(', ')} and ${last}`;
}
