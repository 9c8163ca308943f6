import type { LineFormatChoice } from '#contract/bench/source.ts'

/** A line format in words. */
export function lineFormatWords(format: LineFormatChoice): string {
  if (format.name === 'number') return 'one number a line'
  if (format.name === 'checked') return 'checked lines with sequence and time'
  if (format.name === 'crc') return 'lines with a CRC, sequence and time'
  return format.columns.length === 0 ? 'columns' : `columns: ${format.columns.join(', ')}`
}

/** What a line format notices of lost and damaged lines, for whoever chooses one. */
export function lineFormatWorth(name: LineFormatChoice['name']): string {
  switch (name) {
    case 'number':
      return 'No lost line is noticed, and a damaged one only where it is no number any more. Times are those of arrival.'
    case 'columns':
      return 'Lost lines are noticed where one column is a sequence, damaged ones only where a column is no number any more.'
    case 'checked':
      return 'Every lost line is noticed, and every line with one wrong character. Two wrong digits cancel each other about one time in 13 and pass; a CRC finds these too.'
    case 'crc':
      return 'Every lost line is noticed, and of the damaged ones all but about one in 65,000: the best choice where you write the firmware.'
  }
}
