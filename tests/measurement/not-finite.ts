/** Paths of every number in a value that is NaN or infinite. */
export function notFinite(value: unknown, path = ''): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}/${key}`));
}
