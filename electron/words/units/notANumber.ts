import type { TypedNumber } from '#domain/units/typedNumber.ts'

/** What is said of a field that holds no number; `wanted`: what to write there. */
export function notANumber(text: string, wanted: string): string {
  return `“${text.trim()}” is not a number. Write ${wanted}.`
}

/** What is said of a unit that is not one of what is asked for; `wanted`: what to write there. */
export function strangeUnit(text: string, wanted: string): string {
  return `“${text.trim()}” has a unit that does not fit here. Write ${wanted}.`
}

/** What is asked where a comma may part thousands or decimals. */
export function askWhichNumber(text: string, both: Extract<TypedNumber, { kind: 'ambiguous' }>): string {
  return `“${text.trim()}” may be ${both.asDecimal} or ${both.asThousands}. Write the one you mean without the comma.`
}

/** "in inches": a unit within a sentence that asks for a number. */
export function inUnit(unit: string): string {
  return `in ${{ in: 'inches', 'in²': 'square inches', 'in/min': 'inches per minute' }[unit] ?? unit}`
}
