/** A typed number; a comma counts as a decimal point. undefined: it is no number. null: nothing was typed. */
export function readNumber(text: string): number | null | undefined {
  const trimmed = text.trim().replace(',', '.')
  if (trimmed === '') return null
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(trimmed) ? Number(trimmed) : undefined
}
