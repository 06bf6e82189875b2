/** A value for each of the names. */
export function byName<Name extends string, Value>(
  names: readonly Name[],
  of: (name: Name) => Value,
): Record<Name, Value> {
  return Object.fromEntries(names.map((name) => [name, of(name)])) as Record<Name, Value>;
}
