/**
 * One text for one value: keys in the order of their UTF-16 code units, no white space, numbers and strings as
 * JSON.stringify writes them. Two records that say the same have the same hash, however they were laid out.
 * Source: RFC 8785 3.2 (clause from memory).
 */
/** The value comes from JSON.parse, or holds nothing that JSON cannot hold; a key that is undefined is left out. */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, member]) => `${JSON.stringify(key)}:${canonicalJson(member)}`);
  return `{${members.join(',')}}`;
}
