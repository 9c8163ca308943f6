import type { LineFormatChoice } from '#contract/bench/source.ts'

/** A line format in words. */
export function lineFormatWords(format: LineFormatChoice): string {
  if (format.name === 'number') return 'one number a line'
  if (format.name === 'checked') return 'checked lines with sequence and time'
  return format.columns.length === 0 ? 'columns' : `columns: ${format.columns.join(', ')}`
}
