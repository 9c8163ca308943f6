import type { Comparison } from '#contract/breaks/comparison.ts'
import { countOf } from '../../units/counts.ts'
import type { Quantity } from '../../units/quantities.ts'

/** What the lines of curves over each other are called where their forms are explained. */
export const comparedLineNames = {
  curve: 'a break',
  median: 'median',
  quartile: 'quartiles',
  aside: 'set aside',
  outlying: 'outlying',
} as const

const zeroNames: Record<Comparison['alignAt'], string> = {
  onset: 'the start of loading',
  peak: 'the peak',
  break: 'the break',
}

/** What so many curves over each other are called, with the group that they are of; null: they are of several. */
export function comparedTitle(curves: number, group: string | null): string {
  const what = curves === 1 ? 'Load curve' : `${countOf(curves, 'load curve')} over each other`
  return group === null ? what : `${what}: ${group}`
}

/** What the axes of curves over each other show. */
export function comparedAxes(
  { unit, timeUnit, alignAt }: Pick<Comparison, 'unit' | 'timeUnit' | 'alignAt'>,
  force: Pick<Quantity, 'unit'>,
): { x: string; y: string } {
  const time = timeUnit === '%' ? '% of the time to peak' : 's'
  const load =
    unit === '%' ? 'load, % of the curve’s own peak' : unit === 'N' ? `load, ${force.unit}` : 'reading, counts'
  return { x: `time from ${zeroNames[alignAt]}, ${time}`, y: load }
}

/** What curves over each other show, for those who do not see them. `outlying`: each with how it stands out. */
export function comparedCurvesWords({
  names,
  aside,
  outlying,
  withMedian,
}: {
  names: readonly string[]
  aside: readonly string[]
  outlying: readonly string[]
  withMedian: boolean
}): string {
  return [
    `Curves of ${names.join(', ')}.`,
    withMedian ? 'Their median and quartiles are drawn over them.' : '',
    aside.length === 0 ? '' : `Set aside: ${aside.join(', ')}.`,
    outlying.length === 0 ? '' : `Outlying: ${outlying.join('; ')}.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}

/** Of which breaks the curves are, as it stands below a figure that is handed on. */
export function comparedAbout(breakIds: readonly number[]): string {
  return `${breakIds.length === 1 ? 'Break' : 'Breaks'} ${breakIds.join(', ')}.`
}
