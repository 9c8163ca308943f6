import { namedAxis, valueAxis } from '../axes/axis.ts'
import { type Frame, framed } from '../axes/frame.ts'
import { type Key, keyRows } from '../axes/keyRows.ts'
import { alongLine, type Box, freePlace } from '../axes/labelPlace.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import type { At, Mark, PointShape } from '../drawing/mark.ts'
import { pointMark } from '../drawing/pointShape.ts'
import { textWidth } from '../drawing/textWidth.ts'

export type PlotPoint = At & {
  shape: PointShape
  /** Drawn as an outline only. */
  hollow?: boolean
  /** Ringed, as one that calls for attention. */
  ringed?: boolean
  /** What is said of it. */
  words: string
}

/** A line across, with its name; an empty name is not written. */
export type Level = { y: number; name: string; ink: 'zero' | 'limit' | 'centre' }

export type PointPlot = {
  title: string
  description: string
  points: readonly PlotPoint[]
  levels: readonly Level[]
  xTitle: string
  yTitle: string
  /** Joins the points in their order. */
  joined?: boolean
  /** Height of the plot with its axes, in heights of its text. */
  heightEm: number
  /** What stands under 0, 1, 2, ... instead of the number; null: numbers. */
  xNames?: readonly string[] | null
  /** Whether the numbers below begin at zero; they do unless it is said. */
  fromZero?: boolean
  keys?: readonly Key[]
}

/** Points over a number or in their order, with lines for what they are held against. */
export function pointPlot(plot: PointPlot, size: FigureSize): Figure {
  const { points, levels, xTitle, yTitle, heightEm, xNames = null, fromZero = true, keys = [] } = plot
  const { widthPx, emPx: em } = size
  const columns = Math.min(Math.max(Math.floor(widthPx / (8 * em)), 2), 10)
  const across = [...(fromZero ? [0] : []), ...points.map((point) => point.x)]
  const x = xNames === null ? valueAxis(across, columns) : namedAxis(xNames)
  const rows = Math.min(Math.max(Math.floor((heightEm - 4) / 2.4), 2), 6)
  const y = valueAxis([...points.map((point) => point.y), ...levels.map((level) => level.y)], rows)
  const [frame, axes] = framed({ x, y, xTitle, yTitle, heightEm }, size)
  const placed = points.map((point) => ({ ...point, x: frame.atX(point.x), y: frame.atY(point.y) }))
  const [keysPx, keyMarks] = keyRows(keys, frame.heightPx, widthPx, em)
  const joins = plot.joined === true && points.length > 1
  const joined: Mark[] = joins ? [{ kind: 'line', ink: 'joined', through: placed }] : []
  return {
    ...size,
    heightPx: frame.heightPx + keysPx,
    title: plot.title,
    description: plot.description,
    marks: [
      ...axes,
      ...levelMarks(levels, frame, joins ? alongLine(placed, em / 2) : placed, em),
      ...joined,
      ...placed.map((point) => drawnPoint(point, em)),
      ...keyMarks,
    ],
    readings: placed.map(({ x, y, words }) => ({ x, y, words })),
  }
}

function drawnPoint({ shape, hollow = false, ringed, words, x, y }: PlotPoint, em: number): Mark {
  const ring: Mark[] = ringed ? [{ kind: 'circle', ink: 'ring', x, y, r: 0.75 * em }] : []
  return { kind: 'named', words, marks: [...ring, pointMark(shape, { x, y }, em / 12.5, hollow)] }
}

/** Lines across, each named above or below its right end, or its left where the right is taken. */
function levelMarks(levels: readonly Level[], frame: Frame, points: readonly At[], em: number): Mark[] {
  const { left, right, top, bottom, atY } = frame
  const room: Box = { x: left, y: top - em, width: right - left, height: bottom - top + em }
  const taken: Box[] = []
  const names = levels.flatMap(({ y, name }): Mark[] => {
    if (name === '') return []
    const width = textWidth(name, em)
    const place = freePlace(
      [right - width - 0.25 * em, left + 0.25 * em, (left + right - width) / 2].flatMap((x) => [
        { x, y: atY(y) - 1.25 * em, width, height: 1.15 * em },
        { x, y: atY(y) + 0.1 * em, width, height: 1.15 * em },
      ]),
      { room, taken, points },
    )
    if (place === null) return []
    taken.push(place)
    const onLeft = place.x + width / 2 < (left + right) / 2
    const x = onLeft ? place.x : place.x + width
    return [{ kind: 'text', ink: 'label', x, y: place.y + 0.9 * em, text: name, anchor: onLeft ? 'start' : 'end' }]
  })
  const lines = levels.map(
    ({ y, ink }): Mark => ({ kind: 'rule', ink, from: { x: left, y: atY(y) }, to: { x: right, y: atY(y) } }),
  )
  return [...lines, ...names]
}
