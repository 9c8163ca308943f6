import type { StoredSeries } from '#contract/findings/climateAnswers.ts'
import { ageInWords } from '#words/breaks/groupName.ts'
import { storedStrengthWords, strengthAtAgeWords } from '#words/findings/climate/climateFigureWords.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { valueAxis } from '../../axes/axis.ts'
import { calendarAxis } from '../../axes/calendarAxis.ts'
import { framed } from '../../axes/frame.ts'
import { pointLabels } from '../../axes/pointLabels.ts'
import type { Figure, FigureSize, Reading } from '../../drawing/figure.ts'
import type { Mark } from '../../drawing/mark.ts'
import { pointMark } from '../../drawing/pointShape.ts'
import { type DayMark, dayMarks } from './climatePanel.ts'

const heightEm = 15

/** Mean strength of a series by the day on which its blocks were broken, under the climate in which they lay. */
export function storedStrength(
  {
    series,
    axis,
    name,
    days,
  }: {
    series: StoredSeries
    axis: { fromS: number; toS: number }
    name: string
    days: readonly DayMark[]
  },
  strength: Quantity,
  size: FigureSize,
): Figure {
  const { widthPx, emPx: em } = size
  const shown = (value: number) => value * strength.factor
  const ages = series.ages.flatMap((one) => (one.meanMPa === null ? [] : [{ ...one, meanMPa: one.meanMPa }]))
  const values = ages.flatMap(({ meanMPa, lowMPa, highMPa }) => [meanMPa, lowMPa ?? meanMPa, highMPa ?? meanMPa])
  const x = calendarAxis(axis.fromS, axis.toS, Math.max(Math.floor(widthPx / (9 * em)), 2))
  const parts = { x, y: valueAxis(values.map(shown), 4), xTitle: '', yTitle: `mean strength, ${strength.unit}` }
  const [frame, axes] = framed({ ...parts, heightEm }, size)
  const points = ages.map((one) => ({ one, x: frame.atX(one.brokenS), y: frame.atY(shown(one.meanMPa)) }))
  const room = {
    ...{ x: frame.left, y: frame.top, width: frame.right - frame.left, height: frame.bottom - frame.top },
  }
  const readings = points.map(({ one, x, y }): Reading => ({ x, y, words: strengthAtAgeWords(one, strength) }))
  const bars = points.flatMap(({ one: { lowMPa, highMPa }, x }): Mark[] =>
    lowMPa === null || highMPa === null
      ? []
      : [
          {
            ...{ kind: 'rule', ink: 'spread' },
            ...{ from: { x, y: frame.atY(shown(lowMPa)) }, to: { x, y: frame.atY(shown(highMPa)) } },
          },
        ],
  )
  return {
    ...size,
    heightPx: frame.heightPx,
    title: `Mean strength of ${name} by the day of the break`,
    description: storedStrengthWords(name, ages, strength),
    marks: [
      ...axes,
      ...days.flatMap((day) => dayMarks(frame, day)),
      ...bars,
      ...points.map(
        ({ x, y }, i): Mark => ({
          ...{ kind: 'named', words: readings[i]!.words },
          marks: [pointMark('square', { x, y }, (1.1 * em) / 12.5, false)],
        }),
      ),
      ...pointLabels(
        points.map(({ one, x, y }) => ({ x, y, text: ageInWords(one.ageMonths), before: false })),
        { room, drawn: points.map(({ x, y }) => ({ x, y })) },
        em,
      ),
    ],
    readings,
  }
}
