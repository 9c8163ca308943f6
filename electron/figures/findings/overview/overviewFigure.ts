import type { OverviewGroup } from '#domain/findings/overview/overviewGroups.ts'
import { overviewDescription, overviewTitle } from '#words/findings/overviewWords.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { type Axis, placesOn, valueAxis } from '../../axes/axis.ts'
import { keyRows } from '../../axes/keyRows.ts'
import type { Figure, FigureSize } from '../../drawing/figure.ts'
import type { Mark } from '../../drawing/mark.ts'
import { type BlockScene, blockMarks, sceneOf } from './blockScene.ts'
import { type Box, matrixOf } from './matrix.ts'
import { overviewKeys } from './overviewKeys.ts'
import { stepsBetween } from './strengthSteps.ts'

/** A figure of groups, and the place of each, in the order of the groups. */
export type GroupsFigure = Figure & { places: readonly Box[] }

/**
 * Every block as one mark: adhesives by conditions and ages; in a group by strength upwards and by colour, its torn wood by
 * shape; below it what is not broken. `heightPx`: of a sheet that it is to fill; null: as high as it likes.
 */
export function overviewFigure(
  groups: readonly OverviewGroup[],
  quantities: Pick<Quantities, 'length' | 'strength'>,
  size: FigureSize,
  heightPx: number | null = null,
): GroupsFigure {
  const { emPx: em } = size
  const { strength } = quantities
  const axis = valueAxis(strengthsOf(groups, strength.factor), 6)
  const steps = stepsBetween(axis.from, axis.to)
  const keys = overviewKeys(groups, steps, strength.unit)
  const [keysPx] = keyRows(keys, 0, size.widthPx, em)
  const rows = new Set(groups.map(({ adhesive }) => adhesive)).size
  const sizes = {
    ...{ heading: '', cellEm: 2.6, leastEm: 1.3, rowEm: rows > 24 ? 3 : rows > 8 ? 4 : 5.2, besideEm: 3.2 },
    heightPx: heightPx === null ? null : heightPx - keysPx,
  }
  const matrix = matrixOf(groups, quantities, sizes, size)
  const scene = sceneOf(groups, matrix.places)
  const scale = {
    shareOf: (strengthMPa: number) => (strengthMPa * strength.factor - axis.from) / (axis.to - axis.from),
    stepOf: (strengthMPa: number) => steps.stepOf(strengthMPa * strength.factor),
  }
  return {
    ...{ widthPx: matrix.widthPx, heightPx: matrix.heightPx + keysPx, emPx: em },
    title: overviewTitle,
    description: overviewDescription(groups, strength),
    marks: [
      ...matrix.marks,
      ...matrix.strips.flatMap((strip) => valueMarks(axis, strip, scene, em)),
      ...blockMarks(groups, matrix.places, scene, scale),
      ...keyRows(keys, matrix.heightPx, size.widthPx, em)[1],
    ],
    readings: [],
    places: matrix.places,
  }
}

/** In the unit that is shown. */
function strengthsOf(groups: readonly OverviewGroup[], factor: number): number[] {
  return groups.flatMap(({ blocks }) =>
    blocks.flatMap(({ strengthMPa }) => (strengthMPa === null ? [] : [strengthMPa * factor])),
  )
}

/** The first and the last value of the axis beside the first strip of a row, where there is room for both. */
function valueMarks(axis: Axis, strip: Box & { outer: boolean }, scene: BlockScene, em: number): Mark[] {
  const [first, last] = [axis.ticks[0], axis.ticks.at(-1)]
  if (!strip.outer || first === undefined || last === undefined) return []
  const atY = placesOn(axis, strip.y + scene.lowestPx, strip.y + scene.highestPx)
  const baselineOf = (value: number) => Math.max(atY(value) + 0.35 * em, strip.y + em)
  const named = baselineOf(first.value) - baselineOf(last.value) < 1.3 * em ? [last] : [first, last]
  return named.map(({ value, label }): Mark => {
    return { kind: 'text', ink: 'tick', x: strip.x - 0.4 * em, y: baselineOf(value), text: label, anchor: 'end' }
  })
}
