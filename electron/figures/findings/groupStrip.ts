import { groupStripWords, stripBlockWords, stripGroupWords } from '#words/findings/stripWords.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { placesOn, valueAxis } from '../axes/axis.ts'
import { type Frame, framed } from '../axes/frame.ts'
import { type Key, keyRows } from '../axes/keyRows.ts'
import type { Figure, FigureSize, Reading } from '../drawing/figure.ts'
import type { Mark } from '../drawing/mark.ts'
import { wrappedText } from '../drawing/textWidth.ts'
import { arrowOn, blockSign, tornWoodKeys } from './blockSign.ts'
import { lanesOf } from './lanes.ts'

export type StripBlock = {
  name: string
  strengthMPa: number
  /** It held at least this: the load went higher than could be read. */
  lowerLimit: boolean
  /** Percent of the bonded area that failed in the wood; null: not assessed. */
  woodFailurePercent: number | null
}
/** A group of blocks with the mean of its statistic; null: none is given. */
export type StripGroup = { name: string; meanMPa: number | null; blocks: readonly StripBlock[] }

/** Side of a block's sign, in heights of the text. */
const signEm = 0.85
const laneEm = 1.05
const nameEm = 1.3

/** One strip for each group with every block at its strength; a block's square is filled as far up as wood tore. */
export function groupStrip(groups: readonly StripGroup[], strength: Quantity, size: FigureSize): Figure {
  const { widthPx, emPx: em } = size
  const { factor, unit } = strength
  const values = groups.flatMap(({ blocks, meanMPa }) => [
    ...blocks.map(({ strengthMPa }) => strengthMPa * factor),
    ...(meanMPa === null ? [] : [meanMPa * factor]),
  ])
  const x = valueAxis(values, Math.min(Math.max(Math.floor(widthPx / (8 * em)), 2), 8))
  const none = { from: 0, to: 1, ticks: [] }
  const axes = { x, y: none, xTitle: `strength, ${unit}`, yTitle: '' }
  // The width of the frame does not hang on its height, and the height of a strip hangs on that width
  const [{ left, right }] = framed({ ...axes, heightEm: 10 }, size)
  const rows = rowsOf(groups, strength, placesOn(x, left, right), right - left, em)
  const heightPx = rows.reduce((sum, row) => sum + row.heightPx, 0)
  const [frame, axisMarks] = framed({ ...axes, heightEm: heightPx / em + 4.2 }, size)
  const [strips, readings] = drawnRows(rows, frame, strength, em)
  const [keysPx, keys] = keyRows(keysOf(groups, em), frame.heightPx, widthPx, em)
  const grid = x.ticks.map(
    ({ value }): Mark => ({
      kind: 'rule',
      ink: 'grid',
      from: { x: frame.atX(value), y: frame.top },
      to: { x: frame.atX(value), y: frame.bottom },
    }),
  )
  return {
    ...size,
    heightPx: frame.heightPx + keysPx,
    title: 'Strength of every specimen, by group',
    description: groupStripWords(groups, strength),
    marks: [...grid, ...axisMarks, ...strips, ...keys],
    readings,
  }
}

type Row = {
  group: StripGroup
  names: string[]
  /** In order of strength, with where they stand: x in pixels, lane from the middle. */
  blocks: { block: StripBlock; x: number; lane: number }[]
  /** Middle of the strip below the top of the row, and the height of the strip and of the whole row, pixels. */
  middle: number
  stripPx: number
  heightPx: number
}

function rowsOf(
  groups: readonly StripGroup[],
  strength: Quantity,
  atX: (value: number) => number,
  widthPx: number,
  em: number,
): Row[] {
  return groups.map((group) => {
    const ordered = group.blocks.toSorted((a, b) => a.strengthMPa - b.strengthMPa)
    const places = ordered.map(({ strengthMPa }) => atX(strengthMPa * strength.factor))
    const lanes = lanesOf(places, 1.05 * em)
    const names = wrappedText(stripGroupWords(group, strength), widthPx, em)
    const reach = lanes.reduce((most, lane) => Math.max(most, Math.abs(lane)), 0)
    const stripPx = (2 * reach * laneEm + 1.5) * em
    const namesPx = (nameEm * names.length + 0.5) * em
    const blocks = ordered.map((block, index) => ({ block, x: places[index]!, lane: lanes[index]! }))
    return { group, names, blocks, middle: namesPx + stripPx / 2, stripPx, heightPx: namesPx + stripPx + 0.7 * em }
  })
}

function drawnRows(rows: readonly Row[], frame: Frame, strength: Quantity, em: number): [Mark[], Reading[]] {
  const marks: Mark[] = []
  const readings: Reading[] = []
  let top = frame.top
  for (const { group, names, blocks, middle, stripPx, heightPx } of rows) {
    const y = top + middle
    marks.push({ kind: 'rule', ink: 'axis', from: { x: frame.left, y }, to: { x: frame.right, y } })
    if (group.meanMPa !== null) {
      const x = frame.atX(group.meanMPa * strength.factor)
      marks.push({ kind: 'rule', ink: 'mean', from: { x, y: y - stripPx / 2 }, to: { x, y: y + stripPx / 2 } })
    }
    for (const { block, x, lane } of blocks) {
      const at = { x, y: y + lane * laneEm * em }
      const words = stripBlockWords(block, strength)
      marks.push({ kind: 'named', words, marks: blockSign(block, at, signEm * em, 'right') })
      readings.push({ ...at, words })
    }
    for (const [line, text] of names.entries()) {
      const baseline = top + (1 + nameEm * line) * em
      marks.push({ kind: 'text', ink: 'label', x: frame.left, y: baseline, text, anchor: 'start' })
    }
    top += heightPx
  }
  return [marks, readings]
}

function keysOf(groups: readonly StripGroup[], em: number): Key[] {
  const blocks = groups.flatMap((group) => group.blocks)
  const keys = tornWoodKeys(blocks, signEm * em)
  if (blocks.some(({ lowerLimit }) => lowerLimit))
    keys.push({
      name: 'held at least this',
      sign: ({ x, y }) => arrowOn({ x: x - 0.3 * em, y }, (signEm / 2) * em, 'right'),
    })
  if (groups.some(({ meanMPa }) => meanMPa !== null))
    keys.push({
      name: 'mean of the group',
      sign: ({ x, y }) => [{ kind: 'rule', ink: 'mean', from: { x, y: y - 0.6 * em }, to: { x, y: y + 0.6 * em } }],
    })
  return keys
}
