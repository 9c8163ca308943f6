import { stripBlockWords } from '#words/findings/stripWords.ts'
import { unassessedWords, woodLimitWords, woodStrengthWords } from '#words/findings/woodStrengthWords.ts'
import type { Quantity } from '#words/units/quantities.ts'
import type { Key } from '../axes/keyRows.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import { type PointShape, pointShapes } from '../drawing/mark.ts'
import { pointMark } from '../drawing/pointShape.ts'
import { pointPlot } from '../points/pointPlot.ts'

export type WoodStrengthBlock = {
  name: string
  jointType: string
  strengthMPa: number
  /** Percent of the bonded area that failed in the wood; null: not assessed, and not drawn. */
  woodFailurePercent: number | null
}

/** Wood failure of every block over its strength: a shape for each joint type, filled where the wood failed. */
export function woodStrengthFigure(
  blocks: readonly WoodStrengthBlock[],
  limitPercent: number,
  strength: Quantity,
  size: FigureSize,
): Figure {
  const joints = [...new Set(blocks.map(({ jointType }) => jointType))].sort()
  // Beyond as many joint types as there are shapes, the last shape stands for all others
  const shapeOf = (jointType: string): PointShape =>
    pointShapes[Math.min(joints.indexOf(jointType), pointShapes.length - 1)] ?? 'circle'
  const drawn = blocks.flatMap(({ woodFailurePercent, ...block }) =>
    woodFailurePercent === null ? [] : [{ ...block, woodFailurePercent }],
  )
  return pointPlot(
    {
      title: 'Wood failure over strength',
      description: woodStrengthWords(blocks, limitPercent, strength),
      points: drawn.map((block) => ({
        x: block.strengthMPa * strength.factor,
        y: block.woodFailurePercent,
        shape: shapeOf(block.jointType),
        hollow: block.woodFailurePercent < limitPercent,
        words: stripBlockWords({ ...block, lowerLimit: false }, strength),
      })),
      levels: [
        { y: 0, name: '', ink: 'zero' },
        { y: limitPercent, name: woodLimitWords(limitPercent), ink: 'limit' },
        { y: 100, name: '', ink: 'centre' },
      ],
      xTitle: `strength, ${strength.unit}`,
      yTitle: 'wood failure, % of the bonded area',
      fromZero: false,
      heightEm: 22,
      keys: keysOf(joints, blocks.length - drawn.length, size.emPx),
    },
    size,
  )
}

function keysOf(joints: readonly string[], unassessed: number, em: number): Key[] {
  const sign = (shape: PointShape, hollow: boolean): Key['sign'] => {
    return (at) => [pointMark(shape, at, em / 12.5, hollow)]
  }
  const last = pointShapes.length - 1
  const shapes: Key[] = pointShapes.slice(0, joints.length).map((shape, i) => ({
    name: i === last && joints.length > pointShapes.length ? 'other joint types' : joints[i]! || 'joint type not named',
    sign: sign(shape, true),
  }))
  return [
    ...(joints.length > 1 ? shapes : []),
    { name: 'the bond failed', sign: sign('circle', true) },
    { name: 'the wood failed', sign: sign('circle', false) },
    ...(unassessed > 0 ? [{ name: unassessedWords(unassessed), sign: null }] : []),
  ]
}
