import type { BlockOfBreak } from '#contract/breaks/break.ts'
import { ageInMonthsWords, calendarDayWords } from '#words/units/calendarDays.ts'
import type { Quantities } from '#words/units/quantities.ts'
import type { ListColumn } from './chosenColumns.ts'

type BlockKey = 'lot' | 'wood' | 'board' | 'place' | 'gap' | 'gluedOn' | 'age' | 'study'

/** Columns of what is known of a block, for every list of blocks; each list puts them where it wants them. `blockOf` null: there is none. */
export function blockColumns<Row, Sort extends string>(
  { length }: Quantities,
  blockOf: (row: Row) => BlockOfBreak | null,
): Record<BlockKey, ListColumn<Row, Sort>> {
  const text = (
    key: 'lot' | 'wood' | 'board' | 'place' | 'study',
    title: string,
    weight: number,
  ): ListColumn<Row, Sort> => ({
    ...{ key, title, weight, atFirst: false },
    cell: (row) => {
      const written = blockOf(row)?.[key] ?? ''
      return <span title={written}>{written}</span>
    },
  })
  return {
    lot: text('lot', 'Lot', 10),
    wood: text('wood', 'Wood', 8),
    board: text('board', 'Board', 9),
    place: text('place', 'Place', 12),
    study: text('study', 'Study', 18),
    gap: {
      ...{ key: 'gap', title: 'Gap', unit: length.unit, numeric: true, weight: 7, atFirst: false },
      cell: (row) => {
        const block = blockOf(row)
        return block === null ? '' : length.number(block.bondLineGapMm)
      },
    },
    gluedOn: {
      ...{ key: 'gluedOn', title: 'Glued on', weight: 12, atFirst: false },
      cell: (row) => {
        const day = blockOf(row)?.gluedOn ?? null
        return day === null ? '' : calendarDayWords(day)
      },
    },
    age: {
      ...{ key: 'age', title: 'Age', weight: 9, atFirst: false },
      cell: (row) => {
        const months = blockOf(row)?.ageMonths ?? null
        return months === null ? '' : ageInMonthsWords(months)
      },
    },
  }
}
