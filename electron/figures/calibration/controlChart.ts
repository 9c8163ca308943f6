import type { CheckHistory } from '#contract/calibration/checkWeight.ts'
import { controlWords } from '#words/calibration/charts/controlWords.ts'
import { signedForce } from '#words/calibration/charts/signedForce.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { instantWords } from '#words/units/times.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import type { PointShape } from '../drawing/mark.ts'
import { type Level, pointPlot } from '../points/pointPlot.ts'

/** individuals: each deviation. ewma: their weighted average. ranges: the change from each check to the next. */
export type ControlChartKind = 'individuals' | 'ewma' | 'ranges'

/** What a chart shows, N, with the numbers that its checks have. */
export type ControlChart = {
  title: string
  yTitle: string
  shape: PointShape
  heightEm: number
  values: readonly { n: number; name: string; said: string }[]
  /** What stands below, one name for each place; the last value stands over the last of them. */
  xNames: readonly string[]
  centre: { n: number; name: string } | null
  /** Lower and upper; ranges have no lower one. */
  limitsN: readonly [number | null, number] | null
  /** Whether zero means something that values are held against. */
  zero: boolean
}

/** What the chart of one check weight shows; null while there is too little for one. */
export function controlChartOf(history: CheckHistory, kind: ControlChartKind): ControlChart | null {
  return charts[kind](history)
}

/** A control chart with its limits; what lies outside is ringed. */
export function controlChart(chart: ControlChart, force: Quantity, size: FigureSize): Figure {
  const { values, limitsN, centre } = chart
  const outside = (n: number) => limitsN !== null && (n < (limitsN[0] ?? n) || n > limitsN[1])
  const first = chart.xNames.length - values.length
  return pointPlot(
    {
      title: chart.title,
      description: controlWords(
        {
          count: values.length,
          centreN: centre?.n ?? null,
          limitsN,
          outside: values.filter(({ n }) => outside(n)).map(({ name }) => name),
        },
        force,
      ),
      points: values.map(({ n, said }, index) => ({
        x: first + index,
        y: n * force.factor,
        shape: chart.shape,
        ringed: outside(n),
        words: `${said}: ${signedForce(n, force)}${outside(n) ? ', outside' : ''}`,
      })),
      levels: levelsOf(chart, force.factor),
      xTitle: 'check',
      yTitle: `${chart.yTitle}, ${force.unit}`,
      joined: true,
      heightEm: chart.heightEm,
      xNames: chart.xNames,
    },
    size,
  )
}

function levelsOf({ centre, limitsN, zero }: ControlChart, factor: number): Level[] {
  const levels: Level[] = zero ? [{ y: 0, name: '', ink: 'zero' }] : []
  if (centre !== null) levels.push({ y: centre.n * factor, name: centre.name, ink: 'centre' })
  if (limitsN !== null) levels.push({ y: limitsN[1] * factor, name: 'upper limit', ink: 'limit' })
  const lower = limitsN?.[0] ?? null
  if (lower !== null) levels.push({ y: lower * factor, name: 'lower limit', ink: 'limit' })
  return levels
}

const charts: Record<ControlChartKind, (history: CheckHistory) => ControlChart | null> = {
  individuals({ checks, individuals, verdict, weight }) {
    if (checks.length === 0) return null
    const lower = verdict.lowerN ?? individuals?.lower ?? null
    const upper = verdict.upperN ?? individuals?.upper ?? null
    return {
      title: `Deviations of the check weight ${weight} with their limits`,
      yTitle: 'read minus expected',
      shape: 'circle',
      heightEm: 18,
      values: checks.map(({ deviationN, takenAt }, index) => ({
        n: deviationN,
        name: `check ${index + 1}`,
        said: `${index + 1}, ${instantWords(takenAt)}`,
      })),
      xNames: numbers(checks.length),
      centre: individuals === null ? null : { n: individuals.centre, name: 'centre' },
      limitsN: lower === null || upper === null ? null : [lower, upper],
      zero: true,
    }
  },
  ewma({ checks, ewma, individuals, weight }) {
    if (ewma === null) return null
    const first = checks.length - ewma.smoothed.length
    return {
      title: `Weighted average of the check weight ${weight} with its limits`,
      yTitle: 'weighted average',
      shape: 'triangle',
      heightEm: 18,
      values: ewma.smoothed.map((n, index) => ({
        n,
        name: `check ${first + index + 1}`,
        said: `${first + index + 1}`,
      })),
      xNames: numbers(ewma.smoothed.length, first),
      centre: individuals === null ? null : { n: individuals.centre, name: 'centre' },
      limitsN: [ewma.lower, ewma.upper],
      zero: false,
    }
  },
  ranges({ individuals, weight }) {
    if (individuals === null) return null
    const { movingRanges, meanMovingRange, movingRangeUpper } = individuals
    return {
      title: `Moving ranges of the check weight ${weight} with their limit`,
      yTitle: 'change from the check before',
      shape: 'square',
      heightEm: 12,
      values: movingRanges.map((n, index) => ({
        n,
        name: `checks ${index + 1} to ${index + 2}`,
        said: `${index + 1} to ${index + 2}`,
      })),
      xNames: numbers(movingRanges.length + 1),
      centre: { n: meanMovingRange, name: 'mean' },
      limitsN: [null, movingRangeUpper],
      zero: true,
    }
  },
}

const numbers = (count: number, after = 0) => Array.from({ length: count }, (_, index) => String(after + index + 1))
