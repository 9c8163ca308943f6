/** A column of numbers whose length is not known beforehand. */
export type GrowingColumn = {
  push(value: number): void
  length(): number
  /** The values pushed so far, in an array of their own. */
  values(): Float64Array
}

/** An empty column; it doubles its room when full, so a million values are copied about twenty times at most. */
export function growingColumn(): GrowingColumn {
  let room = new Float64Array(1024)
  let length = 0
  return {
    push(value) {
      if (length === room.length) {
        const larger = new Float64Array(room.length * 2)
        larger.set(room)
        room = larger
      }
      room[length++] = value
    },
    length: () => length,
    values: () => room.slice(0, length),
  }
}
