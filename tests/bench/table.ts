import type { Measurement } from './measurement.ts'

const headings = ['measured', 'value', 'unit', 'baseline in this run', 'times better', 'target', '']

/** The measurements of one benchmark as a table for people. */
export function tableText(measurements: readonly Measurement[]): string {
  const rows = [headings, ...measurements.map(cellsOf)]
  const widths = headings.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)))
  const lines = rows.map((row) =>
    row
      .map((cell, column) =>
        rightAligned.has(column) ? cell.padStart(widths[column] ?? 0) : cell.padEnd(widths[column] ?? 0),
      )
      .join('  ')
      .trimEnd(),
  )
  return `${lines.join('\n')}\n`
}

const rightAligned = new Set([1, 4])

function cellsOf({ what, value, unit, baseline, target }: Measurement): string[] {
  return [
    what,
    shown(value),
    unit,
    baseline === null ? '' : `${baseline.name}: ${shown(baseline.value)}`,
    baseline === null ? '' : shown(baseline.times),
    target?.text ?? '',
    target === null ? '' : target.met ? 'met' : 'NOT MET',
  ]
}

/** Three figures, four from a thousand on, thousands apart; whole numbers whole. */
export function shown(value: number): string {
  if (Number.isInteger(value)) return value.toLocaleString('en-GB')
  return value.toLocaleString('en-GB', { maximumSignificantDigits: Math.abs(value) >= 1000 ? 4 : 3 })
}
