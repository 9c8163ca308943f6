import type { StudyFields } from '#contract/programme/study.ts'
import { cellsOf, seriesOf } from './cells.ts'

/** What a study needs. Null: what it follows from is not said. */
export type StudyTotals = {
  series: number
  cells: number
  /** Blocks with an age, spares, and both. */
  aged: number
  spares: number
  blocks: number
  adhesives: { name: string; blocks: number; grams: number | null }[]
  grams: number | null
  /** Blocks that lie there at the start, without those that are broken as soon as they have cured. */
  exposures: { name: string; blocks: number; shelfMm3: number | null }[]
  shelfMm3: number | null
  /** Both pieces of every block one after the other along the board, without saw cuts. */
  woodMm: number | null
  woodMm3: number | null
  /** Blocks that the boards give; null: no board is named. */
  boardsGive: number | null
}

type Sizes = Pick<StudyFields, 'pieceLengthMm' | 'pieceWidthMm' | 'pieceThicknessMm' | 'overlapLengthMm'>

/**
 * Blocks, adhesive, wood and shelf that a study needs.
 *
 *   wood  = 2 · blocks · piece length      shelf = blocks · (2 · piece length − overlap) · width · (2 · thickness)
 *
 * A block is two equal pieces that overlap; on the shelf it takes the room of the box around it.
 * Source: arithmetic. Checked: tests/domain/programme/study/totals.spec.ts against counts and sums done by hand.
 */
export function studyTotals(fields: StudyFields): StudyTotals {
  const cells = cellsOf(fields)
  const series = seriesOf(fields)
  const { blocksPerCell, sparesPerSeries, adhesiveGPerBlock: gramsEach } = fields
  const count = (of: (one: { adhesive: string; exposure: string }) => boolean, isOnShelf = false) =>
    blocksPerCell * cells.filter((one) => of(one) && (!isOnShelf || one.ageMonths > 0)).length +
    sparesPerSeries * series.filter(of).length
  const aged = blocksPerCell * cells.length
  const spares = sparesPerSeries * series.length
  const blocks = aged + spares
  const grams = (some: number) => (gramsEach === null ? null : some * gramsEach)
  const exposures = fields.exposures.map((name) => {
    const onShelf = count(({ exposure }) => exposure === name, true)
    return { name, blocks: onShelf, shelfMm3: times(onShelf, blockMm3(fields)) }
  })
  const woodMm = times(2 * blocks, fields.pieceLengthMm)
  return {
    ...{ series: series.length, cells: cells.length, aged, spares, blocks },
    adhesives: fields.adhesives.map((name) => {
      const some = count(({ adhesive }) => adhesive === name)
      return { name, blocks: some, grams: grams(some) }
    }),
    grams: grams(blocks),
    exposures,
    shelfMm3: times(
      exposures.reduce((sum, one) => sum + one.blocks, 0),
      blockMm3(fields),
    ),
    woodMm,
    woodMm3: times(woodMm ?? 0, sectionMm2(fields)),
    boardsGive: fields.boards.length === 0 ? null : fields.boards.reduce((sum, board) => sum + board.blocks, 0),
  }
}

function sectionMm2({ pieceLengthMm, pieceWidthMm, pieceThicknessMm }: Sizes): number | null {
  return pieceLengthMm === null || pieceWidthMm === null || pieceThicknessMm === null
    ? null
    : pieceWidthMm * pieceThicknessMm
}

/** The box around a glued block, mm3. */
function blockMm3(sizes: Sizes): number | null {
  const section = sectionMm2(sizes)
  const { pieceLengthMm, overlapLengthMm } = sizes
  if (section === null || pieceLengthMm === null || overlapLengthMm === null) return null
  return (2 * pieceLengthMm - Math.min(overlapLengthMm, pieceLengthMm)) * 2 * section
}

const times = (count: number, each: number | null) => (each === null ? null : count * each)
