import type { MeanTreatment } from '#contract/findings/overview.ts'
import type { GroupMean } from '#domain/findings/overview/meanTable.ts'
import {
  countMeaning,
  countText,
  meanTableDescription,
  meanTableTitle,
  noAgeWords,
  noMeanWords,
} from '#words/findings/overviewWords.ts'
import { treatedName } from '#words/findings/treatmentWords.ts'
import { writeFixed } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { valueAxis } from '../../axes/axis.ts'
import { type Key, keyRows } from '../../axes/keyRows.ts'
import type { FigureSize } from '../../drawing/figure.ts'
import { type Ink, type Mark, onScaleInks, scaleInks } from '../../drawing/mark.ts'
import { type Box, matrixOf } from './matrix.ts'
import type { GroupsFigure } from './overviewFigure.ts'
import { stepKeys } from './overviewKeys.ts'
import { stepsBetween } from './strengthSteps.ts'

/** How torn wood was treated in the means, and the adhesive that they are held against; null: none. */
export type MeanTableTerms = { treatment: MeanTreatment; reference: string | null }

/**
 * The mean of every group as a number on a colour: adhesives by conditions and ages, in the unit of strengths or in percent of a
 * reference, with the number of blocks below. `heightPx` as of an overview.
 */
export function heatTable(
  means: readonly GroupMean[],
  terms: MeanTableTerms,
  quantities: Pick<Quantities, 'length' | 'strength'>,
  size: FigureSize,
  heightPx: number | null = null,
): GroupsFigure {
  const { emPx: em, widthPx } = size
  const { strength } = quantities
  const { treatment, reference } = terms
  const values = means.map(({ meanMPa, percentOfReference }) => (reference === null ? meanMPa : percentOfReference))
  const factor = reference === null ? strength.factor : 1
  const unit = reference === null ? strength.unit : '%'
  const text = (value: number) => (reference === null ? strength.number(value) : writeFixed(value, 0))
  const axis = valueAxis(
    values.flatMap((value) => (value === null ? [] : [value * factor])),
    6,
  )
  const steps = stepsBetween(axis.from, axis.to)
  const title = meanTableTitle(treatedName(treatment), unit, reference)
  const keys = keysOf(means, values.includes(null), stepKeys(steps, unit), terms)
  const [keysPx] = keyRows(keys, 0, widthPx, em)
  const sizes = { heading: title, cellEm: 3.4, leastEm: 3.4, rowEm: 2.9, besideEm: 0 }
  const matrix = matrixOf(means, quantities, { ...sizes, heightPx: heightPx === null ? null : heightPx - keysPx }, size)
  const cells = means.flatMap(({ n }, at): Mark[] => {
    const value = values[at]!
    return value === null
      ? [inMiddle('title', matrix.places[at]!, '–', 0.35 * em)]
      : cellMarks(matrix.places[at]!, steps.stepOf(value * factor), [text(value), countText(n)], em)
  })
  return {
    ...{ widthPx: matrix.widthPx, heightPx: matrix.heightPx + keysPx, emPx: em },
    title,
    description: meanTableDescription(means, reference, quantities),
    marks: [...matrix.marks, ...cells, ...keyRows(keys, matrix.heightPx, widthPx, em)[1]],
    readings: [],
    places: matrix.places,
  }
}

/** A coloured place with its number, and how many blocks that is of where the place is high enough. */
function cellMarks(place: Box, step: number, [number, count]: readonly [string, string], em: number): Mark[] {
  const { x, y, width, height } = place
  const ink = onScaleInks[step]!
  const both = height >= 2.6 * em
  return [
    { kind: 'band', ink: scaleInks[step]!, x: x + 0.5, y: y + 0.5, width: width - 1, height: height - 1 },
    inMiddle(ink, place, number, both ? -0.2 * em : 0.35 * em),
    ...(both ? [inMiddle(ink, place, count, 1.05 * em)] : []),
  ]
}

function inMiddle(ink: Ink, { x, y, width, height }: Box, text: string, belowPx: number): Mark {
  return { kind: 'text', ink, x: x + width / 2, y: y + height / 2 + belowPx, text, anchor: 'middle' }
}

function keysOf(means: readonly GroupMean[], empty: boolean, steps: readonly Key[], terms: MeanTableTerms): Key[] {
  const words = [
    ...(means.length === 0 ? [] : [countMeaning]),
    ...(empty ? [noMeanWords(terms.treatment.woodFailure, terms.reference)] : []),
    ...(means.some(({ ageMonths }) => ageMonths === null) ? [noAgeWords] : []),
  ]
  return [...steps, ...words.map((name): Key => ({ name, sign: null }))]
}
