import { scaleLinear } from 'd3-scale'
import type { NoFit } from '#domain/findings/censored/censoredFit.ts'
import type { WeibullPlot } from '#domain/findings/censored/weibullPlot.ts'
import { failedBondWords, heldBondWords, weibullWords } from '#words/findings/weibullWords.ts'
import { percentWords, withoutEndingZeros, writeFixed } from '#words/units/numbers.ts'
import type { Quantity } from '#words/units/quantities.ts'
import type { Axis } from '../axes/axis.ts'
import { type Frame, framed } from '../axes/frame.ts'
import { type Key, keyRows } from '../axes/keyRows.ts'
import type { Figure, FigureSize, Reading } from '../drawing/figure.ts'
import type { At, Mark } from '../drawing/mark.ts'
import { pointMark } from '../drawing/pointShape.ts'

export type WeibullBlock = {
  name: string
  strengthMPa: number
  /** The wood failed first: its bond held at least this. */
  held: boolean
}
/** A group with its blocks, and what was worked out of them. */
export type WeibullPaper = { name: string; blocks: readonly WeibullBlock[]; plot: WeibullPlot; confidence: number }

const namedShares = [0.001, 0.01, 0.05, 0.1, 0.2, 0.5, 0.9, 0.99, 0.999]
/** Height on Weibull paper: ln(−ln(1 − p)). */
const onPaper = (share: number) => Math.log(-Math.log1p(-share))

type Line = Exclude<WeibullPlot['line'], NoFit>

/**
 * The bonds of one group on Weibull paper: those that failed in the middle of their Kaplan-Meier step, those that outlasted the
 * wood on a lane below, and the fitted line with its band.
 */
export function weibullFigure(paper: WeibullPaper, strength: Quantity, size: FigureSize): Figure {
  const { name, blocks, plot, confidence } = paper
  const { widthPx, emPx: em } = size
  const line = typeof plot.line === 'string' ? null : plot.line
  const shares = plot.failed.map(({ share }) => share)
  const [least, most] = [Math.min(0.01, ...shares), Math.max(0.99, ...shares)]
  const shown = line?.filter(({ share }) => share >= least && share <= most) ?? []
  const x = strengthAxis(
    [...blocks, ...shown].map(({ strengthMPa }) => strengthMPa * strength.factor),
    widthPx / (8 * em),
  )
  const y = paperAxis(least, most)
  const titles = { xTitle: `strength, ${strength.unit} (logarithmic)`, yTitle: 'share of bonds that fail below, %' }
  const [frame, axes] = framed({ x, y, ...titles, heightEm: 24 }, size)
  const atX = (strengthMPa: number) => frame.atX(Math.log(strengthMPa * strength.factor))
  const [points, readings] = pointsOf(blocks, plot.failed, { frame, atX, strength, em })
  const tenth = line?.find(({ share }) => share === 0.1) ?? null
  const [keysPx, keys] = keyRows(
    keysOf(plot.held.length > 0, line !== null, confidence, em),
    frame.heightPx,
    widthPx,
    em,
  )
  return {
    ...size,
    heightPx: frame.heightPx + keysPx,
    title: `Strength of the bonds on Weibull paper: ${name}`,
    description: weibullWords(
      name,
      {
        failed: blocks.length - plot.held.length,
        held: plot.held.length,
        parameters: plot.parameters,
        why: typeof plot.line === 'string' ? plot.line : null,
        tenth,
        confidence,
      },
      strength,
    ),
    marks: [...gridOf(x, frame), ...axes, ...lineMarks(shown, frame, atX), ...points, ...keys],
    readings,
  }
}

/** An axis of logarithms, named by the round values that they are of. */
function strengthAxis(values: readonly number[], wanted: number): Axis {
  const known = values.length === 0 ? [1, 10] : values
  const [low, high] = [Math.min(...known) / 1.05, Math.max(...known) * 1.05]
  const scale = scaleLinear([low, high], [0, 1])
  const ticks = scale.ticks(Math.min(Math.max(Math.floor(wanted), 2), 7)).filter((value) => value > 0)
  return {
    from: Math.log(low),
    to: Math.log(high),
    ticks: ticks.map((value) => ({ value: Math.log(value), label: withoutEndingZeros(writeFixed(value, 2)) })),
  }
}

function paperAxis(least: number, most: number): Axis {
  const ticks = namedShares
    .filter((share) => share >= least * 0.9 && share <= most * 1.001)
    .map((share) => ({ value: onPaper(share), label: withoutEndingZeros(writeFixed(100 * share, 1)) }))
  // The lane of the bonds that held lies below the lowest share
  return { from: onPaper(least) - 0.9, to: onPaper(most) + 0.1, ticks }
}

const gridOf = (x: Axis, { top, bottom, atX }: Frame): Mark[] =>
  x.ticks.map(({ value }) => ({
    ...{ kind: 'rule', ink: 'grid' },
    from: { x: atX(value), y: top },
    to: { x: atX(value), y: bottom },
  }))

/** The line and its band, cut off at the edges of the frame; an open end of the band goes to the edge. */
function lineMarks(line: Line, { left, right, atY }: Frame, atX: (strengthMPa: number) => number): Mark[] {
  if (line.length === 0) return []
  const within = (x: number) => Math.min(Math.max(x, left), right)
  const at = (strengthMPa: number | null, open: number, share: number): At => ({
    x: strengthMPa === null || strengthMPa <= 0 ? open : within(atX(strengthMPa)),
    y: atY(onPaper(share)),
  })
  const lows = line.map(({ low, share }) => at(low, left, share))
  const highs = line.map(({ high, share }) => at(high, right, share)).reverse()
  const outline = [...lows, ...highs].map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')
  return [
    { kind: 'path', ink: 'shade', d: `M${outline}Z` },
    { kind: 'line', ink: 'curve', through: line.map(({ strengthMPa, share }) => at(strengthMPa, left, share)) },
  ]
}

type Place = { frame: Frame; atX(strengthMPa: number): number; strength: Quantity; em: number }

function pointsOf(
  blocks: readonly WeibullBlock[],
  failed: readonly { strengthMPa: number; share: number }[],
  { frame, atX, strength, em }: Place,
): [Mark[], Reading[]] {
  const shareOf = new Map(failed.map(({ strengthMPa, share }) => [strengthMPa, share]))
  const readings: Reading[] = []
  const marks = blocks
    .toSorted((one, other) => one.strengthMPa - other.strengthMPa)
    .map(({ name, strengthMPa, held }): Mark => {
      const share = shareOf.get(strengthMPa) ?? 0
      const at = { x: atX(strengthMPa), y: held ? frame.bottom - 0.8 * em : frame.atY(onPaper(share)) }
      const words = held
        ? heldBondWords(name, strengthMPa, strength)
        : failedBondWords(name, strengthMPa, share, strength)
      readings.push({ ...at, words })
      return { kind: 'named', words, marks: held ? heldSign(at, em) : [pointMark('circle', at, em / 12.5, false)] }
    })
  return [marks, readings]
}

/** A hollow triangle with an arrow on: it held more. */
function heldSign({ x, y }: At, em: number): Mark[] {
  return [
    { kind: 'rule', ink: 'spread', from: { x, y }, to: { x: x + 0.8 * em, y } },
    pointMark('triangle', { x, y }, em / 12.5, true),
  ]
}

function keysOf(held: boolean, line: boolean, confidence: number, em: number): Key[] {
  return [
    { name: 'the bond failed', sign: (at) => [pointMark('circle', at, em / 12.5, false)] },
    ...(held
      ? [
          {
            name: 'the wood failed first: the bond held more',
            sign: (at: At) => heldSign(at, em),
          },
        ]
      : []),
    ...(line
      ? [
          {
            name: `fitted line with its ${percentWords(100 * confidence)} band`,
            sign: ({ x, y }: At): Mark[] => [
              { kind: 'band', ink: 'shade', x: x - 0.5 * em, y: y - 0.5 * em, width: 1.1 * em, height: em },
              { kind: 'rule', ink: 'curve', from: { x: x - 0.5 * em, y }, to: { x: x + 0.6 * em, y } },
            ],
          },
        ]
      : []),
  ]
}
