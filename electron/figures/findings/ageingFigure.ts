import { agedBlockWords, agedMeanWords, ageingFigureWords, upcomingWords } from '#words/findings/ageingFigureWords.ts'
import { percentWords } from '#words/units/numbers.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { valueAxis } from '../axes/axis.ts'
import { type Frame, framed } from '../axes/frame.ts'
import { type Key, keyRows } from '../axes/keyRows.ts'
import type { Figure, FigureSize, Reading } from '../drawing/figure.ts'
import type { At, Mark } from '../drawing/mark.ts'
import { pointMark } from '../drawing/pointShape.ts'
import { ageAxis } from './ageAxis.ts'
import { arrowOn, blockSign, type SignedBlock, tornWoodKeys } from './blockSign.ts'
import { lanesOf } from './lanes.ts'

export type AgedMark = SignedBlock & { name: string; ageMonths: number; strengthMPa: number }
export type AgedMean = {
  ageMonths: number
  n: number
  meanMPa: number | null
  lowMPa: number | null
  highMPa: number | null
}
/** A series over its ages. */
export type AgeingPicture = {
  name: string
  /** Each at its own age. */
  blocks: readonly AgedMark[]
  /** Means of the groups, youngest first, with their intervals. */
  means: readonly AgedMean[]
  /** The line with its band; null: too few ages. */
  curve: readonly { ageMonths: number; meanMPa: number; lowMPa: number; highMPa: number }[] | null
  upcomingMonths: readonly number[]
  endMonths: number
  /** A share of the first mean that is watched; null: none. */
  level: { sharePercent: number; strengthMPa: number } | null
  /** What the strengths of all series drawn beside this one reach, MPa, so that they share a scale. */
  reachMPa: number
  heightEm: number
  /** Whether the signs are explained below. */
  withKeys: boolean
}

const signEm = 0.62
/** How far means stand before their age and blocks behind it, so that neither hides the other. */
const asideEm = 0.45

/** Strength against age: blocks, means with intervals, the line averaged over the models with its band, and the ages still to come. */
export function ageingFigure(picture: AgeingPicture, strength: Quantity, size: FigureSize): Figure {
  const { emPx: em, widthPx } = size
  const lastSeen = Math.max(0, ...picture.means.map(({ ageMonths }) => ageMonths))
  const age = ageAxis(lastSeen, picture.endMonths)
  const rows = Math.min(Math.max(Math.floor((picture.heightEm - 4) / 2.6), 3), 7)
  const y = valueAxis([0, picture.reachMPa * strength.factor], rows)
  const titles = { xTitle: age.title, yTitle: `strength, ${strength.unit}` }
  const [frame, axes] = framed({ x: age.axis, y, ...titles, heightEm: picture.heightEm }, size)
  const places: Places = {
    frame,
    x: (ageMonths) => frame.atX(age.place(ageMonths)),
    // What reaches beyond the frame is drawn to its edge
    y: (strengthMPa) => frame.atY(Math.min(Math.max(strengthMPa * strength.factor, y.from), y.to)),
    em,
  }
  const [blockMarks, blockReadings] = drawnBlocks(picture, places, strength)
  const [meanMarks, meanReadings] = drawnMeans(picture, places, strength)
  const [aheadMarks, aheadReadings] = drawnUpcoming(picture, places, strength)
  const keys = picture.withKeys ? ageingKeys([picture], em) : []
  const [keysPx, keyMarks] = keyRows(keys, frame.heightPx, widthPx, em)
  return {
    ...size,
    heightPx: frame.heightPx + keysPx,
    title: `Strength against age: ${picture.name}`,
    description: ageingFigureWords(picture, strength),
    marks: [
      ...drawnBand(picture, places),
      ...axes,
      ...drawnLevel(picture, places),
      ...blockMarks,
      ...drawnLine(picture, places, lastSeen),
      ...meanMarks,
      ...aheadMarks,
      ...keyMarks,
    ],
    readings: [...meanReadings, ...blockReadings, ...aheadReadings],
  }
}

/** The signs of several pictures, explained once. */
export function ageingKeysFigure(pictures: readonly AgeingPicture[], size: FigureSize): Figure {
  const [keysPx, marks] = keyRows(ageingKeys(pictures, size.emPx), 0, size.widthPx, size.emPx)
  return { ...size, heightPx: Math.max(keysPx, 1), title: 'Signs', description: '', marks, readings: [] }
}

type Places = { frame: Frame; x(ageMonths: number): number; y(strengthMPa: number): number; em: number }

function drawnBand({ curve }: AgeingPicture, { x, y }: Places): Mark[] {
  if (curve === null) return []
  const high = curve.map(({ ageMonths, highMPa }) => ({ x: x(ageMonths), y: y(highMPa) }))
  const low = curve.map(({ ageMonths, lowMPa }) => ({ x: x(ageMonths), y: y(lowMPa) }))
  const path = [...high, ...low.toReversed()].map((at) => `${rounded(at.x)} ${rounded(at.y)}`)
  return [
    { kind: 'path', ink: 'band', d: `M${path.join('L')}Z` },
    { kind: 'line', ink: 'centre', through: high },
    { kind: 'line', ink: 'centre', through: low },
  ]
}

/** Whole over the ages that were seen, in dashes beyond them. */
function drawnLine({ curve }: AgeingPicture, { x, y }: Places, lastSeen: number): Mark[] {
  if (curve === null) return []
  const at = (some: NonNullable<AgeingPicture['curve']>): At[] =>
    some.map(({ ageMonths, meanMPa }) => ({ x: x(ageMonths), y: y(meanMPa) }))
  return [
    { kind: 'line', ink: 'curve', through: at(curve.filter(({ ageMonths }) => ageMonths <= lastSeen)) },
    { kind: 'line', ink: 'ahead', through: at(curve.filter(({ ageMonths }) => ageMonths >= lastSeen)) },
  ]
}

function drawnLevel({ level }: AgeingPicture, { frame, y, em }: Places): Mark[] {
  if (level === null) return []
  const at = y(level.strengthMPa)
  return [
    { kind: 'rule', ink: 'limit', from: { x: frame.left, y: at }, to: { x: frame.right, y: at } },
    {
      ...{ kind: 'text', ink: 'label', x: frame.right - 0.3 * em, y: at - 0.35 * em, anchor: 'end' },
      text: `${percentWords(level.sharePercent)} of the first mean`,
    },
  ]
}

function drawnBlocks({ blocks }: AgeingPicture, { frame, x, y, em }: Places, strength: Quantity): [Mark[], Reading[]] {
  const marks: Mark[] = []
  const readings: Reading[] = []
  const ages = [...Map.groupBy(blocks, ({ ageMonths }) => ageMonths)].sort(([one], [other]) => one - other)
  for (const [index, [ageMonths, together]] of ages.entries()) {
    const ordered = together.toSorted((one, other) => other.strengthMPa - one.strengthMPa)
    const slots = lanesOf(
      ordered.map(({ strengthMPa }) => y(strengthMPa)),
      1.15 * signEm * em,
    ).map((lane) => (lane < 0 ? -2 * lane - 1 : 2 * lane))
    const next = ages[index + 1]
    const room = (next === undefined ? frame.right : x(next[0])) - x(ageMonths) - 2.6 * asideEm * em
    const stepPx = Math.min(1.15 * signEm * em, Math.max(room, 0) / (Math.max(...slots) + 1))
    for (const [i, block] of ordered.entries()) {
      const at = { x: x(ageMonths) + asideEm * em + slots[i]! * stepPx, y: y(block.strengthMPa) }
      const words = agedBlockWords(block, strength)
      marks.push({ kind: 'named', words, marks: blockSign(block, at, signEm * em, 'up') })
      readings.push({ ...at, words })
    }
  }
  return [marks, readings]
}

function drawnMeans({ means }: AgeingPicture, { x, y, em }: Places, strength: Quantity): [Mark[], Reading[]] {
  const marks: Mark[] = []
  const readings: Reading[] = []
  for (const mean of means) {
    if (mean.meanMPa === null) continue
    const at = { x: x(mean.ageMonths) - asideEm * em, y: y(mean.meanMPa) }
    const words = agedMeanWords(mean, strength)
    const { lowMPa, highMPa } = mean
    const interval = lowMPa === null || highMPa === null ? [] : intervalSign(at.x, y(lowMPa), y(highMPa), em)
    marks.push({ kind: 'named', words, marks: [...interval, meanSign(at, em)] })
    readings.push({ ...at, words })
  }
  return [marks, readings]
}

const meanSign = (at: At, em: number): Mark => pointMark('diamond', at, (0.9 * em) / 12.5, false)

function intervalSign(x: number, low: number, high: number, em: number): Mark[] {
  const cap = (y: number): Mark => ({
    ...{ kind: 'rule', ink: 'spread' },
    from: { x: x - 0.3 * em, y },
    to: { x: x + 0.3 * em, y },
  })
  return [{ kind: 'rule', ink: 'spread', from: { x, y: low }, to: { x, y: high } }, cap(low), cap(high)]
}

function drawnUpcoming(
  { upcomingMonths, curve }: AgeingPicture,
  { frame, x, em }: Places,
  strength: Quantity,
): [Mark[], Reading[]] {
  const readings = upcomingMonths.map((ageMonths) => ({
    ...{ x: x(ageMonths), y: frame.bottom - 0.5 * em },
    words: upcomingWords(ageMonths, curve, strength),
  }))
  return [readings.map((one) => ({ kind: 'named', words: one.words, marks: [upcomingSign(one, em)] })), readings]
}

const upcomingSign = (at: At, em: number): Mark => pointMark('triangle', at, (0.8 * em) / 12.5, true)

function ageingKeys(pictures: readonly AgeingPicture[], em: number): Key[] {
  const blocks = pictures.flatMap((one) => one.blocks)
  const about = (at: At, halfEm: number) => ({
    from: { ...at, x: at.x - halfEm * em },
    to: { ...at, x: at.x + halfEm * em },
  })
  const keys = tornWoodKeys(blocks, signEm * em)
  if (blocks.some(({ lowerLimit }) => lowerLimit))
    keys.push({ name: 'held at least this', sign: ({ x, y }) => arrowOn({ x, y: y + 0.3 * em }, 0.4 * em, 'up') })
  if (pictures.some(({ means }) => means.some(({ meanMPa }) => meanMPa !== null)))
    keys.push({
      name: 'mean with 95 % interval',
      sign: (at) => [...intervalSign(at.x, at.y + 0.6 * em, at.y - 0.6 * em, em), meanSign(at, em)],
    })
  if (pictures.some(({ curve }) => curve !== null))
    keys.push(
      { name: 'line averaged over the models', sign: (at) => [{ kind: 'rule', ink: 'curve', ...about(at, 0.45) }] },
      { name: 'carried on', sign: (at) => [{ kind: 'rule', ink: 'ahead', ...about(at, 0.45) }] },
      {
        name: 'where the line may lie, 95 %',
        sign: ({ x, y }) => [
          { kind: 'band', ink: 'band', x: x - 0.45 * em, y: y - 0.5 * em, width: 0.9 * em, height: em },
        ],
      },
    )
  if (pictures.some(({ upcomingMonths }) => upcomingMonths.length > 0))
    keys.push({ name: 'age still to come', sign: (at) => [upcomingSign(at, em)] })
  return keys
}

const rounded = (value: number) => Math.round(value * 100) / 100
