import { firstWhere } from '../../numbers/risingSearch.ts'

/** The newest rows of a stream, one array for each column, oldest first. */
export type ColumnRing = {
  length(): number
  /** Adds rows [from, to) of arrays, one array for each column; the oldest rows go where there is no more room. */
  append(columns: readonly Float64Array[], from: number, to: number): void
  forgetOldest(rows: number): void
  clear(): void
  at(column: number, row: number): number
  /** The columns from a row on, in arrays of their own. */
  copyFrom(row: number): Float64Array<ArrayBuffer>[]
  /** The first row whose value in the first column, which must rise, is at or above a value. */
  firstAtOrAfter(wanted: number): number
}

/**
 * A ring buffer whose memory grows with what it holds, up to `most` rows.
 * Throws RangeError for no column or no row. Checked: tests/domain/signal/stream/columnRing.spec.ts.
 */
export function createColumnRing(columns: number, most: number): ColumnRing {
  if (!(columns >= 1 && most >= 1)) throw new RangeError('createColumnRing requires a column and a row at least')
  let capacity = 0
  let arrays = Array.from({ length: columns }, () => new Float64Array(capacity))
  let oldest = 0
  let used = 0

  const slotOf = (row: number) => (oldest + row < capacity ? oldest + row : oldest + row - capacity)

  function copyFrom(row: number, room = used - row): Float64Array<ArrayBuffer>[] {
    const start = slotOf(row)
    const untilEnd = Math.min(used - row, capacity - start)
    return arrays.map((array) => {
      const copy = new Float64Array(room)
      copy.set(array.subarray(start, start + untilEnd))
      copy.set(array.subarray(0, used - row - untilEnd), untilEnd)
      return copy
    })
  }

  function makeRoomFor(rows: number): void {
    const needed = Math.min(most, rows)
    if (needed <= capacity) return
    // Twice as large at least, so that little is copied however long it grows.
    const larger = Math.min(most, needed + capacity)
    arrays = copyFrom(0, larger)
    capacity = larger
    oldest = 0
  }

  function forgetOldest(rows: number): void {
    oldest = slotOf(rows)
    used -= rows
  }

  return {
    length: () => used,
    append(sources, from, to) {
      // Of more rows than there is room for the last ones are left.
      const first = Math.max(from, to - most)
      makeRoomFor(used + to - first)
      forgetOldest(Math.max(0, used + to - first - capacity))
      const start = slotOf(used)
      for (let column = 0; column < columns; column++) writeRound(arrays[column]!, start, sources[column]!, first, to)
      used += to - first
    },
    forgetOldest,
    clear() {
      used = 0
    },
    at: (column, row) => arrays[column]![slotOf(row)]!,
    copyFrom: (row) => copyFrom(row),
    firstAtOrAfter: (wanted) => firstWhere(0, used, (row) => arrays[0]![slotOf(row)]! >= wanted),
  }
}

// Outside the closure, so that the compiler keeps one loop for all rings.

function writeRound(ring: Float64Array, start: number, source: Float64Array, from: number, to: number): void {
  const turn = Math.min(to, from + ring.length - start)
  write(ring, start, source, from, turn)
  write(ring, 0, source, turn, to)
}

function write(ring: Float64Array, start: number, source: Float64Array, from: number, to: number): void {
  for (let i = from; i < to; i++) ring[start + i - from] = source[i]!
}
