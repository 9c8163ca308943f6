// Held by tests/figures/findings/overview/overviewFigure.spec.ts.
import type { GroupBlock, OverviewGroup } from '#domain/findings/overview/overviewGroups.ts'
import type { Mark } from '../../drawing/mark.ts'
import { brokenForm, type Form, unbrokenForm } from './blockForms.ts'
import type { Box } from './matrix.ts'

/** How blocks lie in their places: all places are as high as each other. */
export type BlockScene = {
  /** Of a shape; 1 is as wide as a small letter. */
  size: number
  /** Below the top of a place: where the least and the greatest value stand, and the middle of each line of the shelf, pixels. */
  lowestPx: number
  highestPx: number
  shelfPx: readonly number[]
}

const most = { size: 1, shelfLines: 3 } as const
const leastSize = 0.36
/** A shape of size 1 is so wide with a little air, pixels. */
const shapePx = 9.5
/** So much of a place at each side stays free. */
const sideShare = 0.06

const hasStrength = ({ strengthMPa }: GroupBlock) => strengthMPa !== null

/** Lays blocks out so that those of the fullest place still lie beside each other. */
export function sceneOf(groups: readonly OverviewGroup[], places: readonly Box[]): BlockScene {
  const heightPx = places[0]?.height ?? 0
  const widthPx =
    places.reduce((least, { width }) => Math.min(least, width), Number.POSITIVE_INFINITY) * (1 - 2 * sideShare)
  const mostOf = (of: (block: GroupBlock) => boolean) =>
    groups.reduce((count, { blocks }) => Math.max(count, blocks.filter(of).length), 0)
  const broken = Math.max(mostOf(hasStrength), 1)
  const others = mostOf((block) => !hasStrength(block))
  // Marks of a group rise, so that those beside each other may be wider than their share
  const size = Math.max(Math.min((1.8 * widthPx) / broken / shapePx, heightPx / 70, most.size), leastSize)
  const lines = Math.min(Math.ceil((others * 0.9 * shapePx * size) / widthPx), most.shelfLines)
  const linePx = shapePx * size
  const shelfTop = heightPx - lines * linePx - 1
  const edge = 0.6 * shapePx * size
  return {
    size,
    highestPx: edge,
    lowestPx: Math.max(shelfTop - edge, edge),
    shelfPx: Array.from({ length: lines }, (_, line) => shelfTop + (line + 0.5) * linePx),
  }
}

/** Every block as a form, those of one ink in a row as one mark. `shareOf` says where a strength lies on the axis, 0 to 1; `stepOf` its colour. */
export function blockMarks(
  groups: readonly OverviewGroup[],
  places: readonly Box[],
  scene: BlockScene,
  scale: { shareOf(strengthMPa: number): number; stepOf(strengthMPa: number): number },
): Mark[] {
  // Row by row, so that what shows a part of a long figure need not go through all of it
  const texts = new Map<string, { ink: Form['ink']; forms: string[] }>()
  for (const [index, { blocks }] of groups.entries()) {
    const { x, y, width } = places[index]!
    const add = ({ ink, d }: Form) => {
      const key = `${y} ${ink}`
      const known = texts.get(key)
      if (known === undefined) texts.set(key, { ink, forms: [d] })
      else known.forms.push(d)
    }
    const from = x + sideShare * width
    const inner = (1 - 2 * sideShare) * width
    const broken = blocks.filter(hasStrength)
    for (const [at, block] of broken.entries()) {
      const share = scale.shareOf(block.strengthMPa!)
      const place = {
        x: from + ((at + 0.5) / broken.length) * inner,
        y: y + scene.lowestPx - share * (scene.lowestPx - scene.highestPx),
      }
      add(brokenForm(block, scale.stepOf(block.strengthMPa!), place, scene.size))
    }
    const others = blocks.filter((block) => !hasStrength(block))
    const perLine = Math.ceil(others.length / Math.max(scene.shelfPx.length, 1))
    const step = Math.min(inner / perLine, shapePx * scene.size)
    for (const [at, block] of others.entries()) {
      const line = Math.floor(at / perLine)
      add(unbrokenForm(block, { x: from + ((at % perLine) + 0.5) * step, y: y + scene.shelfPx[line]! }, scene.size))
    }
  }
  return [...texts.values()].map(({ ink, forms }): Mark => ({ kind: 'path', ink, d: forms.join('') }))
}
