import type { RandomStream } from './random.ts'

/**
 * Whole numbers in place of the fractions of a table: each entry, each sum of a row and each sum of a column is rounded up or
 * down by less than 1, at random, and on average nothing is rounded; what is whole stays. Entries are numerators over one
 * denominator, both whole, so that nothing depends on rounding errors.
 *
 * A row and a column that make all sums whole are laid around the table; then no row or column has just one fraction, so there
 * is a ring of fractions, alternately in a row and in a column. Raising every second one and lowering the others keeps all sums;
 * which way is drawn so that the means stay; each step makes one of them whole.
 *
 * Throws RangeError for numbers that are not whole, negative, or too large to be exact.
 * Source: Cox, Journal of the American Statistical Association 82 (1987) 520 ("unbiased controlled rounding"), from memory.
 * Checked: tests/domain/numbers/roundedTable.spec.ts by what the paper proves.
 */
export function roundedTable(
  numerators: readonly (readonly number[])[],
  denominator: number,
  random: RandomStream,
): number[][] {
  if (!numerators.flat().every((one) => Number.isSafeInteger(one) && one >= 0) || !(denominator > 0))
    throw new RangeError('roundedTable requires whole numerators over a positive denominator')
  const table = withMargins(numerators)
  const [rows, columns] = [table.length, table[0]!.length]
  const rest = Float64Array.from(table.flat(), (one) => one % denominator)
  const isFraction = (place: number) => rest[place]! > 0 && rest[place]! < denominator
  // Rows and columns are called by one number each, columns after the rows. What is whole stays so, so that the first fraction
  // of a row or a column only moves on.
  const first = new Int32Array(rows + columns)
  const placeOf = (one: number, other: number) =>
    one < rows ? one * columns + other - rows : other * columns + one - rows

  function neighbour(here: number, before: number): number | null {
    const [from, count] = here < rows ? [rows, columns] : [0, rows]
    while (first[here]! < count && !isFraction(placeOf(here, from + first[here]!))) first[here]! += 1
    for (let other = from + first[here]!; other < from + count; other++)
      if (other !== before && isFraction(placeOf(here, other))) return other
    return null
  }

  function ringFrom(row: number): number[] | null {
    const path = [row]
    for (let before = -1; ; ) {
      const here = path.at(-1)!
      const next = neighbour(here, before)
      if (next === null) return null
      if (path.includes(next)) return path.slice(path.indexOf(next))
      path.push(next)
      before = here
    }
  }

  function turn(ring: readonly number[]): void {
    const places = ring.map((one, index) => placeOf(one, ring[(index + 1) % ring.length]!))
    const above = places.map((place) => denominator - rest[place]!)
    const below = places.map((place) => rest[place]!)
    const up = Math.min(...places.map((_, index) => (index % 2 === 0 ? above : below)[index]!))
    const down = Math.min(...places.map((_, index) => (index % 2 === 0 ? below : above)[index]!))
    const step = random.unit() * (up + down) < down ? up : -down
    for (const [index, place] of places.entries()) rest[place]! += index % 2 === 0 ? step : -step
  }

  for (let row = 0; row < rows; row++) for (let ring = ringFrom(row); ring !== null; ring = ringFrom(row)) turn(ring)
  return numerators.map((list, row) =>
    list.map((one, column) => Math.floor(one / denominator) + (rest[row * columns + column]! > 0 ? 1 : 0)),
  )

  /** The table with the row and the column that make every sum whole. */
  function withMargins(inner: readonly (readonly number[])[]): number[][] {
    const missing = (list: readonly number[]) =>
      (denominator - (list.reduce((sum, one) => (sum + one) % denominator, 0) % denominator)) % denominator
    const wide = inner.map((list) => [...list, missing(list)])
    const last = (inner[0] ?? []).map((_, column) => missing(wide.map((list) => list[column]!)))
    return [...wide, [...last, missing(last)]]
  }
}
