import type { Column } from '../../../widgets/tables/LongTable.tsx'

/** A column that a list can show. */
export type ListColumn<Row, Sort extends string> = Omit<Column<Row, Sort>, 'width'> & {
  /** How wide it is beside the others. */
  weight: number
  /** Shown until somebody chooses otherwise. */
  atFirst: boolean
}

/** As wide as this, with all of them, no cell is too narrow for its words: rem for each weight. */
const remPerWeight = 0.62

/**
 * The columns that are shown, in the order of the list, as wide beside each other as their weights say: those that were chosen,
 * and always the first one, which names the row. `chosen` undefined: nobody chose. `minWidth`: how wide the table must be at least.
 */
export function columnsShown<Row, Sort extends string>(
  all: readonly ListColumn<Row, Sort>[],
  chosen: readonly string[] | undefined,
): { columns: Column<Row, Sort>[]; minWidth: string | undefined } {
  const shown = all.filter(({ key, atFirst }, index) => index === 0 || (chosen?.includes(key) ?? atFirst))
  const sum = shown.reduce((total, { weight }) => total + weight, 0)
  const usual = all.reduce((total, { weight, atFirst }) => total + (atFirst ? weight : 0), 0)
  return {
    columns: shown.map(({ weight, ...column }) => ({ ...column, width: `${(100 * weight) / sum}%` })),
    minWidth: sum > usual ? `${Math.round(sum * remPerWeight)}rem` : undefined,
  }
}

/** The keys of the columns that are shown after one was chosen or let go. */
export function withToggled(
  all: readonly { key: string; atFirst: boolean }[],
  chosen: readonly string[] | undefined,
  toggled: string,
): string[] {
  const before = chosen ?? all.filter(({ atFirst }) => atFirst).map(({ key }) => key)
  return all.map(({ key }) => key).filter((key) => (key === toggled ? !before.includes(key) : before.includes(key)))
}
