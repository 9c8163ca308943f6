import type { ComponentProps } from 'react'
import type { CheckHistory } from '#contract/calibration/checkWeight.ts'
import { signedNumber } from '#words/units/numbers.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { instantWords } from '#words/units/times.ts'
import type { FigureLevel, PointFigure } from '../../../widgets/PointFigure.tsx'

export const chartKinds = [
  { value: 'individuals', label: 'Individuals and moving range' },
  { value: 'ewma', label: 'Weighted average (EWMA)' },
] as const

type Chart = ComponentProps<typeof PointFigure>

const limitsOf = (lower: number, upper: number, factor: number): FigureLevel[] => [
  { y: upper * factor, label: 'upper limit', kind: 'limit' },
  { y: lower * factor, label: 'lower limit', kind: 'limit' },
]

/** The chart of one check weight: each deviation, or their weighted average, against its limits; null while there is none. */
export function checkChart(history: CheckHistory, kind: 'individuals' | 'ewma', force: Quantity): Chart | null {
  const { factor, unit } = force
  if (kind === 'ewma') return ewmaChartOf(history, force)
  if (history.checks.length === 0) return null
  const { individuals, verdict } = history
  const levels: FigureLevel[] = [{ y: 0, label: '', kind: 'zero' }]
  if (individuals !== null) levels.push({ y: individuals.centre * factor, label: 'centre', kind: 'centre' })
  const lower = verdict.lowerN ?? individuals?.lower ?? null
  const upper = verdict.upperN ?? individuals?.upper ?? null
  if (lower !== null && upper !== null) levels.push(...limitsOf(lower, upper, factor))
  return {
    label: `Deviations of the check weight ${history.weight} with their limits`,
    points: history.checks.map((check, index) => ({
      x: index,
      y: check.deviationN * factor,
      shape: 'circle' as const,
      ringed: isOutside(check.deviationN, lower, upper),
      title: `${index + 1}, ${instantWords(check.takenAt)}: ${signedNumber(check.deviationN * factor, 2)} ${unit}${isOutside(check.deviationN, lower, upper) ? ', outside' : ''}`,
    })),
    levels,
    xTitle: 'check',
    yTitle: `read minus expected, ${unit}`,
    joined: true,
    xNames: numbers(history.checks.length),
  }
}

function ewmaChartOf(history: CheckHistory, { factor, unit }: Quantity): Chart | null {
  const { ewma, individuals } = history
  if (ewma === null) return null
  const first = history.checks.length - ewma.smoothed.length
  const levels = limitsOf(ewma.lower, ewma.upper, factor)
  if (individuals !== null) levels.push({ y: individuals.centre * factor, label: 'centre', kind: 'centre' })
  return {
    label: `Weighted average of the check weight ${history.weight} with its limits`,
    points: ewma.smoothed.map((value, index) => ({
      x: index,
      y: value * factor,
      shape: 'triangle' as const,
      ringed: isOutside(value, ewma.lower, ewma.upper),
      title: `${first + index + 1}: ${signedNumber(value * factor, 2)} ${unit}${isOutside(value, ewma.lower, ewma.upper) ? ', outside' : ''}`,
    })),
    levels,
    xTitle: 'check',
    yTitle: `weighted average, ${unit}`,
    joined: true,
    xNames: numbers(ewma.smoothed.length, first),
  }
}

/** How far each check lies from the one before it, with its upper limit; null before there are two. */
export function movingRangeChart({ individuals, weight }: CheckHistory, { factor, unit }: Quantity): Chart | null {
  if (individuals === null) return null
  const upper = individuals.movingRangeUpper
  return {
    label: `Moving ranges of the check weight ${weight} with their limit`,
    points: individuals.movingRanges.map((range, index) => ({
      x: index + 1,
      y: range * factor,
      shape: 'square' as const,
      ringed: range > upper,
      title: `${index + 1} to ${index + 2}: ${signedNumber(range * factor, 2)} ${unit}${range > upper ? ', outside' : ''}`,
    })),
    levels: [
      { y: 0, label: '', kind: 'zero' },
      { y: individuals.meanMovingRange * factor, label: 'mean', kind: 'centre' },
      { y: upper * factor, label: 'upper limit', kind: 'limit' },
    ],
    xTitle: 'check',
    yTitle: `change from the check before, ${unit}`,
    joined: true,
    xNames: numbers(individuals.movingRanges.length + 1),
    heightEm: 12,
  }
}

const isOutside = (value: number, lower: number | null, upper: number | null) =>
  lower !== null && upper !== null && (value < lower || value > upper)

const numbers = (count: number, after = 0) => Array.from({ length: count }, (_, index) => String(after + index + 1))
