/**
 * The one JSON text of a value: keys sorted by UTF-16 code units, no white space, absent for undefined, numbers as ECMAScript
 * writes them. Two equal records give equal bytes.
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`
  if (typeof value === 'object' && value !== null) {
    let parts = ''
    // The order of sort() is that of the code units
    for (const key of Object.keys(value).sort()) {
      const member = (value as Record<string, unknown>)[key]
      if (member !== undefined) parts += `${parts === '' ? '' : ','}${JSON.stringify(key)}:${canonicalJson(member)}`
    }
    return `{${parts}}`
  }
  // Half a surrogate pair is no text; SQLite stores the replacement character for it, so the chain must hold the same.
  return JSON.stringify(typeof value === 'string' ? value.toWellFormed() : value) ?? 'null'
}
