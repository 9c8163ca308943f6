import { between } from '#domain/numbers/between.ts'
import type { Curve } from '#domain/signal/stream/thinning.ts'
import { comparedCurvesWords, comparedLineNames } from '#words/breaks/compare/comparedFigureWords.ts'
import { spanAxis } from '../axes/axis.ts'
import { type Frame, framed } from '../axes/frame.ts'
import { type Key, keyRows } from '../axes/keyRows.ts'
import { pointLabels } from '../axes/pointLabels.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import type { At, Ink, Mark } from '../drawing/mark.ts'
import { shapePath } from '../drawing/pointShape.ts'
import type { Span } from './curveScene.ts'
import { loadAxis } from './loadAxis.ts'
import { type MedianLines, medianMarks } from './medianMarks.ts'
import { thinnedCurve } from './thinnedCurve.ts'

/** A curve among others: drawn at ((t - originS) / timeUnit, force / forceUnit). */
export type OverlaidCurve = {
  name: string
  curve: Curve
  /** Where samples are missing, in its own time. */
  gaps: readonly Span[]
  originS: number
  timeUnit: number
  forceUnit: number
  setAside: boolean
  /** How it stands out from the others, and where on the time axis it lies farthest off. */
  outlying: { at: number; words: string } | null
  /** It lies over the others and is named. */
  isForemost: boolean
}

export type ComparedCurves = {
  title: string
  curves: readonly OverlaidCurve[]
  median: MedianLines | null
  axes: { x: string; y: string }
  /** From the values of the curves to those shown. */
  factor: number
  /** Height of the plot with its axes, in heights of its text. */
  heightEm: number
}

/** With no more curves than this each is named. */
const fewCurves = 6
/** Points of all curves together, so that a file of hundreds of them stays small. */
const mostPoints = 150_000
/** So many points of the curves are enough to keep names off them. */
const mostAvoided = 5000

type Drawn = { one: OverlaidCurve; lines: At[][]; highest: At | null }

/** Load curves of several breaks over each other, with their median and quartiles and what stands out from them. */
export function comparedCurvesFigure(
  { title, curves, median, axes, factor, heightEm }: ComparedCurves,
  size: FigureSize,
): Figure {
  const { widthPx, emPx: em } = size
  const perCurvePx = Math.min(widthPx, mostPoints / Math.max(2 * curves.length, 1))
  const laid = curves.map((one) => ({ one, lines: laidOut(one, factor, perCurvePx) }))
  const all = laid.flatMap(({ lines }) => lines)
  const reach = reachOf(all)
  const x = spanAxis(reach.left, reach.right, Math.min(Math.max(Math.floor(widthPx / (7 * em)), 2), 12))
  const y = loadAxis(reach.least, reach.most, heightEm)
  const [frame, axisMarks] = framed({ x, y, xTitle: axes.x, yTitle: axes.y, heightEm }, size)
  const at = (place: At): At => ({ x: frame.atX(place.x), y: frame.atY(place.y) })
  const drawn = laid.map(({ one, lines }): Drawn => {
    const places = lines.map((line) => line.map(at))
    return { one, lines: places, highest: highestOf(places) }
  })
  const outlying = drawn.flatMap(({ one }) => outlyingPoint(one, factor, at))
  const [keysPx, keys] = keyRows(keysOf(drawn, median !== null, em), frame.heightPx, widthPx, em)
  return {
    ...size,
    heightPx: frame.heightPx + keysPx,
    title,
    description: comparedCurvesWords({
      names: curves.map(({ name }) => name),
      aside: curves.filter(({ setAside }) => setAside).map(({ name }) => name),
      outlying: outlying.map(({ words }) => words),
      withMedian: median !== null,
    }),
    marks: [
      ...axisMarks,
      ...inOrder(drawn).map(curveMark),
      ...(median === null ? [] : medianMarks(median, (place) => at({ x: place.x, y: place.y * factor }))),
      ...drawn.filter(({ one }) => one.isForemost).map(curveMark),
      ...outlying.map(({ x, y, words }): Mark => ({ kind: 'named', words, marks: [outlyingSign({ x, y }, em)] })),
      ...namesOf(drawn, outlying, frame, em),
      ...keys,
    ],
    readings: outlying.toSorted((one, other) => one.x - other.x),
  }
}

/** A curve in stretches without gaps, in units of the axes. */
function laidOut(
  { curve, gaps, originS, timeUnit, forceUnit }: OverlaidCurve,
  factor: number,
  widthPx: number,
): At[][] {
  return thinnedCurve(curve, gaps, widthPx).map(({ timeS, force }) =>
    Array.from(timeS, (time, i) => ({ x: (time - originS) / timeUnit, y: (force[i]! / forceUnit) * factor })),
  )
}

function reachOf(lines: readonly At[][]) {
  const reach = { left: Number.POSITIVE_INFINITY, right: Number.NEGATIVE_INFINITY, least: 0, most: 0 }
  for (const line of lines)
    for (const { x, y } of line) {
      reach.left = Math.min(reach.left, x)
      reach.right = Math.max(reach.right, x)
      reach.least = Math.min(reach.least, y)
      reach.most = Math.max(reach.most, y)
    }
  return reach.left > reach.right ? { ...reach, left: 0, right: 1 } : reach
}

/** The place nearest to the top edge. */
function highestOf(lines: readonly At[][]): At | null {
  let highest: At | null = null
  for (const line of lines) for (const place of line) if (highest === null || place.y < highest.y) highest = place
  return highest
}

const inkOf = ({ isForemost, setAside, outlying }: OverlaidCurve): Ink =>
  isForemost ? 'foremost' : setAside ? 'aside' : outlying === null ? 'overlaid' : 'outlying'

/** What stands out lies over the others; the foremost is drawn after the median. */
function inOrder(drawn: readonly Drawn[]): Drawn[] {
  const rank = ({ one }: Drawn) => ['overlaid', 'aside', 'outlying'].indexOf(inkOf(one))
  return drawn.filter(({ one }) => !one.isForemost).toSorted((a, b) => rank(a) - rank(b))
}

function curveMark({ one, lines }: Drawn): Mark {
  return {
    kind: 'named',
    words: one.name,
    marks: lines.map((through): Mark => ({ kind: 'line', ink: inkOf(one), through })),
  }
}

type OutlyingPoint = At & { name: string; words: string }

function outlyingPoint(one: OverlaidCurve, factor: number, at: (place: At) => At): OutlyingPoint[] {
  if (one.outlying === null) return []
  const { at: x, words } = one.outlying
  const force = between(one.curve.timeS, one.curve.force, x * one.timeUnit + one.originS)
  if (force === null) return []
  return [{ ...at({ x, y: (force / one.forceUnit) * factor }), name: one.name, words: `${one.name}: ${words}` }]
}

function outlyingSign(at: At, em: number): Mark {
  return { kind: 'path', ink: 'event', d: shapePath('triangle', at, (1.2 * em) / 12.5) }
}

/** The foremost, and all where they are few, at their highest; those that stand out where they lie farthest off. */
function namesOf(drawn: readonly Drawn[], outlying: readonly OutlyingPoint[], frame: Frame, em: number): Mark[] {
  const named = drawn
    .filter(({ one }) => one.outlying === null && (one.isForemost || drawn.length <= fewCurves))
    .toSorted((a, b) => Number(b.one.isForemost) - Number(a.one.isForemost))
    .flatMap(({ one, highest }) => (highest === null ? [] : [{ ...highest, text: one.name, before: false }]))
  const points = [...named, ...outlying.map(({ x, y, words }) => ({ x, y, text: words, before: false }))]
  const { left, right, top, bottom } = frame
  const room = { x: left, y: top - em, width: right - left, height: bottom - top + em }
  const all = drawn.flatMap(({ lines }) => lines.flat())
  const every = Math.ceil(all.length / mostAvoided)
  return pointLabels(points, { room, drawn: all.filter((_, index) => index % every === 0) }, em)
}

function keysOf(drawn: readonly Drawn[], withMedian: boolean, em: number): Key[] {
  const rule =
    (ink: Ink) =>
    (at: At): Mark => ({
      ...{ kind: 'rule', ink, from: { x: at.x - 0.5 * em, y: at.y }, to: { x: at.x + 0.5 * em, y: at.y } },
    })
  const { curve, median, quartile, aside, outlying } = comparedLineNames
  const has = (ink: Ink) => drawn.some(({ one }) => inkOf(one) === ink)
  const keys: Key[] = []
  if (has('overlaid')) keys.push({ name: curve, sign: (at) => [rule('overlaid')(at)] })
  if (withMedian)
    keys.push(
      { name: median, sign: (at) => [rule('mean')(at)] },
      {
        name: quartile,
        sign: (at) => [
          { kind: 'band', ink: 'band', x: at.x - 0.5 * em, y: at.y - 0.4 * em, width: em, height: 0.4 * em },
          rule('quartile')(at),
        ],
      },
    )
  if (has('aside')) keys.push({ name: aside, sign: (at) => [rule('aside')(at)] })
  if (drawn.some(({ one }) => one.outlying !== null))
    keys.push({ name: outlying, sign: (at) => [outlyingSign(at, em)] })
  for (const { one } of drawn) if (one.isForemost) keys.push({ name: one.name, sign: (at) => [rule('foremost')(at)] })
  return keys
}
