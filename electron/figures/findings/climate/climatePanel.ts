import type { ClimateBand } from '#contract/findings/climateAnswers.ts'
import { bandPlaceWords, climatePanelWords } from '#words/findings/climate/climateFigureWords.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { valueAxis } from '../../axes/axis.ts'
import { calendarAxis } from '../../axes/calendarAxis.ts'
import { type Frame, framed } from '../../axes/frame.ts'
import { type Key, keyRows } from '../../axes/keyRows.ts'
import type { Figure, FigureSize, Reading } from '../../drawing/figure.ts'
import type { At, Mark } from '../../drawing/mark.ts'

type Span = { readonly fromS: number; readonly toS: number }
/** A day on which blocks of the store were broken or glued, or are to leave it. */
export type DayMark = { readonly timeS: number; readonly name: string; readonly isToCome?: boolean }

/** One quantity of the air in a store over time. */
export type ClimatePanel = {
  /** "temperature". */
  readonly name: string
  /** "exposure loft". */
  readonly store: string
  readonly quantity: Pick<Quantity, 'unit' | 'factor' | 'zeroAt' | 'text'>
  readonly band: ClimateBand
  readonly gaps: readonly Span[]
  readonly days: readonly DayMark[]
  readonly axis: Span
  /** Says below what the forms stand for. */
  readonly keys: boolean
}

/** So many places are read by keys; a figure has more. */
const mostReadings = 60
const heightEm = 13

/** Lowest, mean and highest value over time; gaps, and the days on which blocks were broken. */
export function climatePanel(panel: ClimatePanel, size: FigureSize): Figure {
  const { name, quantity, band, axis } = panel
  const { widthPx, emPx: em } = size
  const shown = (value: number) => value * quantity.factor + (quantity.zeroAt ?? 0)
  const y = valueAxis([...band.min, ...band.max].map(shown), 4)
  const x = calendarAxis(axis.fromS, axis.toS, Math.max(Math.floor(widthPx / (9 * em)), 2))
  const parts = { x, y, xTitle: '', yTitle: `${name}, ${quantity.unit}`, heightEm }
  const [frame, axes] = framed(parts, size)
  const [keysPx, keys] = panel.keys ? keyRows(keysOf(panel, em), frame.heightPx, widthPx, em) : [0, []]
  const at = (i: number, values: Float64Array): At => ({
    x: frame.atX(band.timeS[i]!),
    y: frame.atY(shown(values[i]!)),
  })
  return {
    ...size,
    heightPx: frame.heightPx + keysPx,
    title: `${name} of ${panel.store} over time`,
    description: climatePanelWords(panel),
    marks: [
      ...axes,
      ...panel.gaps.flatMap((gap) => gapMark(gap, frame)),
      ...stretchesOf(panel).flatMap((places) => stretchMarks(places, at, band)),
      ...panel.days.flatMap((day) => dayMarks(frame, day)),
      ...keys,
    ],
    readings: readingsOf(panel, at),
  }
}

const inkOf = (isToCome: boolean) => (isToCome ? 'centre' : 'limit')

/** The line of a day on which blocks were broken or glued, or are to leave the store. */
export function dayMarks(
  { top, bottom, atX, left, right }: Frame,
  { timeS, isToCome = false }: Omit<DayMark, 'name'>,
): Mark[] {
  const x = atX(timeS)
  if (x < left || x > right) return []
  return [{ kind: 'rule', ink: inkOf(isToCome), from: { x, y: top }, to: { x, y: bottom } }]
}

function gapMark({ fromS, toS }: Span, { atX, top, bottom }: Frame): Mark[] {
  const [x, to] = [atX(fromS), atX(toS)]
  // Narrower than its own edge, it would look like a day
  if (to - x < 2) return []
  return [{ kind: 'band', ink: 'gap', x, y: top, width: to - x, height: bottom - top }]
}

/** Places of the band that no gap parts. */
function stretchesOf({ band: { timeS }, gaps }: ClimatePanel): number[][] {
  const stretches: number[][] = []
  for (let i = 0; i < timeS.length; i++) {
    const parted = i > 0 && gaps.some(({ fromS, toS }) => timeS[i - 1]! <= fromS && timeS[i]! >= toS)
    if (i === 0 || parted) stretches.push([])
    stretches.at(-1)!.push(i)
  }
  return stretches
}

function stretchMarks(
  places: readonly number[],
  at: (i: number, values: Float64Array) => At,
  { min, mean, max }: ClimateBand,
): Mark[] {
  const text = ({ x, y }: At) => `${x.toFixed(1)} ${y.toFixed(1)}`
  const upper = places.map((i) => text(at(i, max)))
  const lower = places.map((i) => text(at(i, min))).reverse()
  return [
    { kind: 'path', ink: 'shade', d: `M${[...upper, ...lower].join('L')}Z` },
    { kind: 'line', ink: 'joined', through: places.map((i) => at(i, mean)) },
  ]
}

function readingsOf({ band, quantity }: ClimatePanel, at: (i: number, values: Float64Array) => At): Reading[] {
  const every = Math.max(Math.ceil(band.timeS.length / mostReadings), 1)
  return [...band.timeS.keys()]
    .filter((i) => i % every === 0)
    .map((i) => ({
      ...at(i, band.mean),
      words: bandPlaceWords(
        { timeS: band.timeS[i]!, min: band.min[i]!, mean: band.mean[i]!, max: band.max[i]! },
        quantity.text,
      ),
    }))
}

function keysOf({ gaps, days }: ClimatePanel, em: number): Key[] {
  const line =
    (ink: 'joined' | 'limit' | 'centre') =>
    ({ x, y }: At): Mark[] =>
      ink === 'joined'
        ? [{ kind: 'rule', ink, from: { x: x - 0.5 * em, y }, to: { x: x + 0.5 * em, y } }]
        : [{ kind: 'rule', ink, from: { x, y: y - 0.6 * em }, to: { x, y: y + 0.6 * em } }]
  const box =
    (ink: 'shade' | 'gap') =>
    (at: At): Mark[] => [{ kind: 'band', ink, x: at.x - 0.5 * em, y: at.y - 0.4 * em, width: em, height: 0.8 * em }]
  return [
    { name: 'mean', sign: line('joined') },
    { name: 'lowest to highest', sign: box('shade') },
    ...(gaps.length === 0 ? [] : [{ name: 'no readings', sign: box('gap') }]),
    ...(days.some(({ isToCome }) => !isToCome) ? [{ name: 'blocks glued or broken', sign: line(inkOf(false)) }] : []),
    ...(days.some(({ isToCome }) => isToCome) ? [{ name: 'pull to come', sign: line(inkOf(true)) }] : []),
  ]
}
