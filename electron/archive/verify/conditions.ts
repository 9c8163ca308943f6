/** The expressions of all CHECKs in the text of a table, in their order. The text is one of ours: no comment holds a bracket. */
export function conditionsOf(tableText: string): string[] {
  const conditions: string[] = []
  for (const found of tableText.matchAll(/\bCHECK \(/g)) {
    const start = found.index + found[0].length
    conditions.push(tableText.slice(start, closingBracket(tableText, start)).replaceAll(/\s+/g, ' ').trim())
  }
  return conditions
}

/** Where the bracket that was opened before `start` is closed. Brackets in quoted text do not count. */
function closingBracket(text: string, start: number): number {
  let open = 1
  let quoted = false
  for (let i = start; i < text.length; i++) {
    const letter = text[i]
    if (letter === "'") quoted = !quoted
    else if (!quoted && letter === '(') open += 1
    else if (!quoted && letter === ')') open -= 1
    if (open === 0) return i
  }
  throw new RangeError('conditionsOf requires the whole text of a table')
}
