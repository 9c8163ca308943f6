import type { Curve } from '#domain/signal/stream/thinning.ts'
import { curveMarkWords, loadCurveWords } from '#words/breaks/curveWords.ts'
import { type Axis, spanAxis } from '../axes/axis.ts'
import { type Frame, framed } from '../axes/frame.ts'
import { type Key, keyRows } from '../axes/keyRows.ts'
import { alongLine, type Box } from '../axes/labelPlace.ts'
import { pointLabels } from '../axes/pointLabels.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import type { At, Mark } from '../drawing/mark.ts'
import { pointMark, shapePath } from '../drawing/pointShape.ts'
import { textWidth } from '../drawing/textWidth.ts'
import type { CurveMark, CurveScene } from './curveScene.ts'
import { loadAxis } from './loadAxis.ts'
import { thinnedCurve } from './thinnedCurve.ts'

export type LoadCurve = {
  /** Of which break it is. */
  title: string
  curve: Curve
  scene: CurveScene
  /** How forces of the curve are shown: load in a unit, or readings as they came where there is no scale. */
  shown: { name: 'load' | 'reading'; unit: string; factor: number }
  /** Height of the plot with its axes, in heights of its text. */
  heightEm: number
}

/** Which names keep their place where there is not room for all. */
const namedFirst: readonly CurveMark['shape'][] = ['peak', 'word', 'break', 'onset', 'event']

/** The load of one break over time with everything that was found on it. */
export function loadCurveFigure({ title, curve, scene, shown, heightEm }: LoadCurve, size: FigureSize): Figure {
  const { widthPx, emPx: em } = size
  const { factor, name, unit } = shown
  const stretches = thinnedCurve(curve, scene.gaps, widthPx)
  const [fromS, toS] = [curve.timeS[0] ?? 0, curve.timeS.at(-1) ?? 1]
  const x = spanAxis(fromS, toS, Math.min(Math.max(Math.floor(widthPx / (7 * em)), 2), 12))
  const [least, most] = reachOf(stretches, scene, factor)
  const y = loadAxis(least, most, heightEm)
  const axes = { x, y, xTitle: 'time, s', yTitle: `${name}, ${unit}`, heightEm }
  const [frame, axisMarks] = framed(axes, size)
  const at = (timeS: number, value: number): At => ({ x: frame.atX(timeS), y: frame.atY(value * factor) })
  const lines = stretches.map(({ timeS, force }) => Array.from(timeS, (time, i) => at(time, force[i]!)))
  const placed = scene.marks.map((mark) => ({ mark, ...at(mark.timeS, mark.value), words: curveMarkWords(mark) }))
  const room = {
    x: frame.left,
    y: frame.top - em,
    width: frame.right - frame.left,
    height: frame.bottom - frame.top + em,
  }
  const names = placed
    .map(({ mark, x, y }) => ({ x, y, text: mark.label, before: mark.shape === 'onset', shape: mark.shape }))
    .toSorted((one, other) => namedFirst.indexOf(one.shape) - namedFirst.indexOf(other.shape))
  const levels = levelsIn(scene, frame, y, factor, em)
  const across = levels.flatMap(({ y }) =>
    alongLine(
      [frame.left, frame.right].map((x) => ({ x, y })),
      em,
    ),
  )
  const drawn = [...lines.flat(), ...across]
  const [keysPx, keys] = keyRows(keysOf(scene, em), frame.heightPx, widthPx, em)
  return {
    ...size,
    heightPx: frame.heightPx + keysPx,
    title,
    description: loadCurveWords({ fromS, toS, marks: scene.marks, gaps: scene.gaps.length }),
    marks: [
      ...axisMarks,
      ...shadedMarks(scene, frame, factor),
      ...levelMarks(levels, frame, em),
      ...seatedMarks(scene, frame, at),
      ...lines.map((through): Mark => ({ kind: 'line', ink: 'curve', through })),
      ...placed.map(({ mark, x, y, words }): Mark => ({ kind: 'named', words, marks: curveMark(mark, { x, y }, em) })),
      ...pointLabels(names, { room, drawn, standing: levels.map(({ name }) => name) }, em),
      ...keys,
    ],
    readings: placed.map(({ x, y, words }) => ({ x, y, words })).toSorted((one, other) => one.x - other.x),
  }
}

/** From the lowest to the highest of the whole curve, zero and all marks; a rated load far above the curve would flatten it and stays outside. */
function reachOf(stretches: readonly Curve[], scene: CurveScene, factor: number): [number, number] {
  let [least, most] = [0, 0]
  const take = (value: number) => {
    least = Math.min(least, value * factor)
    most = Math.max(most, value * factor)
  }
  for (const { value } of scene.marks) take(value)
  for (const { force } of stretches) force.forEach(take)
  return [least, most]
}

/** What lasts: events, missing samples and the noise about the level at rest. */
function shadedMarks({ spans, gaps, band }: CurveScene, frame: Frame, factor: number): Mark[] {
  const { left, right, top, bottom, atX, atY } = frame
  const across = (ink: 'span' | 'gap', fromS: number, toS: number): Mark => {
    const from = Math.max(atX(fromS), left)
    const width = Math.max(Math.min(atX(toS), right) - from, 1)
    return { kind: 'band', ink, x: from, y: top, width, height: bottom - top }
  }
  const rest: Mark[] = []
  if (band !== null) {
    const highest = Math.max(atY((band.value + band.halfWidth) * factor), top)
    const lowest = Math.min(atY((band.value - band.halfWidth) * factor), bottom)
    const [from, to] = [Math.max(atX(band.fromS), left), Math.min(atX(band.toS), right)]
    const height = Math.max(lowest - highest, 2)
    rest.push({ kind: 'band', ink: 'rest', x: from, y: highest, width: Math.max(to - from, 0), height })
    const level = atY(band.value * factor)
    rest.push({ kind: 'rule', ink: 'zero', from: { x: left, y: level }, to: { x: right, y: level } })
  }
  const lasting = spans.filter(({ fromS, toS }) => !gaps.some((gap) => gap.fromS === fromS && gap.toS === toS))
  return [
    ...lasting.map(({ fromS, toS }) => across('span', fromS, toS)),
    ...gaps.map(({ fromS, toS }) => across('gap', fromS, toS)),
    ...rest,
  ]
}

type PlacedLevel = { y: number; label: string; name: Box }

/** Levels within the axis, with where their names stand: above their right ends. */
function levelsIn({ levels }: CurveScene, frame: Frame, y: Axis, factor: number, em: number): PlacedLevel[] {
  return levels
    .filter(({ value }) => value * factor >= y.from && value * factor <= y.to)
    .map(({ value, label }) => {
      const at = frame.atY(value * factor)
      const width = textWidth(label, em)
      return { y: at, label, name: { x: frame.right - width - 0.3 * em, y: at - 1.3 * em, width, height: 1.2 * em } }
    })
}

function levelMarks(levels: readonly PlacedLevel[], { left, right }: Frame, em: number): Mark[] {
  return levels.flatMap(({ y, label, name }): Mark[] => [
    { kind: 'rule', ink: 'rated', from: { x: left, y }, to: { x: right, y } },
    { kind: 'text', ink: 'label', x: name.x + name.width, y: name.y + 0.95 * em, text: label, anchor: 'end' },
  ])
}

/** The line through the straight part within the plot, with a short stroke where it meets the level at rest. */
function seatedMarks({ line }: CurveScene, frame: Frame, at: (timeS: number, value: number) => At): Mark[] {
  if (line === null) return []
  const [foot, head] = [at(line.fromS, line.fromValue), at(line.toS, line.toValue)]
  const share = head.x > frame.right ? (frame.right - foot.x) / (head.x - foot.x) : 1
  const end = { x: foot.x + share * (head.x - foot.x), y: foot.y + share * (head.y - foot.y) }
  if (foot.x < frame.left || foot.x > frame.right) return []
  return [
    { kind: 'rule', ink: 'seated', from: foot, to: end },
    { kind: 'rule', ink: 'axis', from: { x: foot.x, y: foot.y - 7 }, to: { x: foot.x, y: foot.y + 7 } },
  ]
}

function curveMark({ shape }: CurveMark, at: At, em: number): Mark[] {
  const size = em / 12.5
  switch (shape) {
    case 'peak':
      return [pointMark('diamond', at, 1.2 * size, true)]
    case 'onset':
      return [pointMark('circle', at, 1.2 * size, true)]
    case 'break':
      return [pointMark('square', at, 1.2 * size, true)]
    case 'event':
      return [{ kind: 'path', ink: 'event', d: shapePath('triangle', at, 1.2 * size) }]
    case 'word':
      // A ring around it: not the peak that was found
      return [{ kind: 'circle', ink: 'chosen', ...at, r: 0.8 * em }, pointMark('diamond', at, 1.2 * size, false)]
  }
}

function keysOf({ band, line, gaps, spans }: CurveScene, em: number): Key[] {
  const swatch = (ink: 'rest' | 'gap' | 'span', at: At, halfHeight: number): Mark => ({
    ...{ kind: 'band', ink, x: at.x - 0.5 * em, y: at.y - halfHeight, width: em, height: 2 * halfHeight },
  })
  const upright = (x: number, y: number): Mark => ({
    ...{ kind: 'rule', ink: 'axis', from: { x, y: y - 0.45 * em }, to: { x, y: y + 0.45 * em } },
  })
  // As they lie in the plot: the rest flat about its level, what lasts upright between two ends
  const restSign = (at: At): Mark[] => [
    swatch('rest', at, 0.2 * em),
    { kind: 'rule', ink: 'zero', from: { x: at.x - 0.5 * em, y: at.y }, to: { x: at.x + 0.5 * em, y: at.y } },
  ]
  const spanSign = (at: At): Mark[] => [
    swatch('span', at, 0.45 * em),
    upright(at.x - 0.5 * em, at.y),
    upright(at.x + 0.5 * em, at.y),
  ]
  const keys: Key[] = []
  if (band !== null && band.halfWidth > 0) keys.push({ name: band.label, sign: restSign })
  if (line !== null)
    keys.push({
      name: line.label,
      sign: ({ x, y }) => [
        {
          kind: 'rule',
          ink: 'seated',
          from: { x: x - 0.5 * em, y: y + 0.4 * em },
          to: { x: x + 0.5 * em, y: y - 0.4 * em },
        },
      ],
    })
  if (spans.length > gaps.length) keys.push({ name: 'while an event lasted', sign: spanSign })
  if (gaps.length > 0) keys.push({ name: 'samples are missing', sign: (at) => [swatch('gap', at, 0.45 * em)] })
  return keys
}
