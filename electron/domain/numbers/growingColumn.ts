/** A column of numbers whose length is not known beforehand. */
export type GrowingColumn = {
  push(value: number): void
  /** Adds values [from, to) of an array. */
  append(values: Float64Array, from: number, to: number): void
  length(): number
  /** The values so far in the memory of the column: they hold until it changes. */
  view(): Float64Array<ArrayBuffer>
  /** The values so far in an array of their own. */
  values(): Float64Array<ArrayBuffer>
  /** Leaves only the first so many. */
  shorten(length: number): void
}

/** The array itself where so many values fit; else a copy of at least twice the length, so that a million are copied some twenty times. */
export function withRoom(array: Float64Array<ArrayBuffer>, length: number): Float64Array<ArrayBuffer> {
  if (length <= array.length) return array
  const larger = new Float64Array(Math.max(length, 2 * array.length))
  larger.set(array)
  return larger
}

/** An empty column. */
export function growingColumn(): GrowingColumn {
  let room = new Float64Array(256)
  let length = 0
  return {
    push(value) {
      if (length === room.length) room = withRoom(room, length + 1)
      room[length++] = value
    },
    append(values, from, to) {
      room = withRoom(room, length + to - from)
      for (let i = from; i < to; i++) room[length++] = values[i]!
    },
    length: () => length,
    view: () => room.subarray(0, length),
    values: () => room.slice(0, length),
    shorten(shorter) {
      if (!(shorter >= 0 && shorter <= length))
        throw new RangeError(`a column of ${length} values has no first ${shorter}`)
      length = shorter
    },
  }
}
