// Held by tests/figures/findings/overview/overviewFigure.spec.ts.
import { type TornWood, tornWoodOf } from '#domain/findings/overview/groupFigures.ts'
import type { GroupBlock } from '#domain/findings/overview/overviewGroups.ts'
import { type At, type Ink, openInks, type PointShape, scaleInks } from '../../drawing/mark.ts'
import { shapePath } from '../../drawing/pointShape.ts'

/** The shape of a block by its torn wood. */
export const shapeOf: Readonly<Record<TornWood, PointShape>> = {
  bond: 'circle',
  partly: 'triangle',
  wood: 'square',
  'not-assessed': 'diamond',
}

/** A form that is drawn with one ink: those of many blocks are drawn at once. */
export type Form = { ink: Ink; d: string }

/** A block with a strength, in the colour of its step; one that was left out is struck through and has none. */
export function brokenForm(
  block: Pick<GroupBlock, 'state' | 'woodFailurePercent'>,
  step: number,
  at: At,
  size: number,
): Form {
  const shape = shapePath(shapeOf[tornWoodOf(block.woodFailurePercent)], at, size)
  if (block.state === 'excluded') return { ink: 'leader', d: shape + stroke(at, 6.5 * size, -1) }
  return { ink: block.state === 'curve' ? scaleInks[step]! : openInks[step]!, d: shape }
}

/** A block without a strength: a ring on the shelf, a dot before it is glued, a cross where it is lost, a plus of unknown area. */
export function unbrokenForm({ state }: Pick<GroupBlock, 'state'>, at: At, size: number): Form {
  if (state === 'planned') return { ink: 'tick', d: shapePath('circle', at, 0.45 * size) }
  if (state === 'waiting') return { ink: 'leader', d: shapePath('circle', at, 0.8 * size) }
  if (state === 'lost') return { ink: 'leader', d: stroke(at, 3.6 * size, -1) + stroke(at, 3.6 * size, 1) }
  const reach = 4.4 * size
  const { x, y } = at
  return {
    ink: 'leader',
    d: `M${tidy(x - reach)} ${tidy(y)}H${tidy(x + reach)}M${tidy(x)} ${tidy(y - reach)}V${tidy(y + reach)}`,
  }
}

/** A slanted line through a place: rising with -1, falling with 1. */
function stroke({ x, y }: At, reach: number, slope: -1 | 1): string {
  return `M${tidy(x - reach)} ${tidy(y - slope * reach)}L${tidy(x + reach)} ${tidy(y + slope * reach)}`
}

function tidy(value: number): number {
  return Math.round(value * 100) / 100
}
