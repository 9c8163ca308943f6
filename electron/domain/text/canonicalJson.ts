/**
 * The one JSON text of a value: keys sorted by UTF-16 code units, no white space, absent for undefined, numbers as ECMAScript
 * writes them. Two equal records give equal bytes.
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`
  if (typeof value === 'object' && value !== null) {
    const parts = Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, member]) => `${JSON.stringify(key)}:${canonicalJson(member)}`)
    return `{${parts.join(',')}}`
  }
  // Half a surrogate pair is no text; SQLite stores the replacement character for it, so the chain must hold the same.
  return JSON.stringify(typeof value === 'string' ? value.toWellFormed() : value) ?? 'null'
}
