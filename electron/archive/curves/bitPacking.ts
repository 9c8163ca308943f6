/**
 * Whole numbers in few bits, in groups of 64: one byte with the width w of the group's widest number, then each number in
 * w bits, lowest bit first, the group filled up to a whole byte. Signed numbers become unsigned first: 0, -1, 1, -2, 2, ...
 * are stored as 0, 1, 2, 3, 4, ... Numbers must lie between -2^52 and 2^52 - 1.
 *
 * Simpler than an entropy coder and, on noise, smaller than variable-length bytes: a delta needs the bits it needs.
 */
const groupSize = 64

function zigzag(value: number): number {
  return value < 0 ? -2 * value - 1 : 2 * value
}

function bitWidth(value: number): number {
  return value < 0x1_0000_0000 ? 32 - Math.clz32(value) : 64 - Math.clz32(Math.floor(value / 0x1_0000_0000))
}

function widthOfGroup(values: Float64Array, start: number, end: number): number {
  let largest = 0
  for (let i = start; i < end; i++) {
    const z = zigzag(values[i]!)
    if (z > largest) largest = z
  }
  return bitWidth(largest)
}

/** How many bytes the numbers take when packed. */
export function packedLength(values: Float64Array): number {
  let bytes = 0
  for (let start = 0; start < values.length; start += groupSize) {
    const end = Math.min(start + groupSize, values.length)
    bytes += 1 + Math.ceil(((end - start) * widthOfGroup(values, start, end)) / 8)
  }
  return bytes
}

/** Packs signed whole numbers. */
export function packNumbers(values: Float64Array): Uint8Array {
  const bytes = new Uint8Array(packedLength(values))
  let at = 0
  for (let start = 0; start < values.length; start += groupSize) {
    const end = Math.min(start + groupSize, values.length)
    const width = widthOfGroup(values, start, end)
    bytes[at++] = width
    let held = 0
    let heldBits = 0
    for (let i = start; i < end; i++) {
      let rest = zigzag(values[i]!)
      // At most 24 bits at a time, so that what is held stays within 31 bits.
      for (let bits = width; bits > 0; bits -= 24) {
        const chunk = rest % 0x100_0000
        rest = (rest - chunk) / 0x100_0000
        held |= chunk << heldBits
        heldBits += Math.min(bits, 24)
        while (heldBits >= 8) {
          bytes[at++] = held & 255
          held >>>= 8
          heldBits -= 8
        }
      }
    }
    if (heldBits > 0) bytes[at++] = held & 255
  }
  return bytes
}

/** Unpacks `target.length` signed whole numbers. Throws RangeError when the bytes are too few, too many or cannot be right. */
export function unpackNumbers(bytes: Uint8Array, target: Float64Array): void {
  let at = 0
  for (let start = 0; start < target.length; start += groupSize) {
    const end = Math.min(start + groupSize, target.length)
    const width = bytes[at++]
    if (width === undefined || width > 53 || at + Math.ceil(((end - start) * width) / 8) > bytes.length)
      throw new RangeError('packed numbers end too early or have an impossible width')
    if (width <= 24) at = unpackNarrow(bytes, at, width, target, start, end)
    else at = unpackWide(bytes, at, width, target, start, end)
  }
  if (at !== bytes.length) throw new RangeError('packed numbers go on after the last number')
}

function unpackNarrow(
  bytes: Uint8Array,
  from: number,
  width: number,
  target: Float64Array,
  start: number,
  end: number,
): number {
  if (width === 0) {
    target.fill(0, start, end)
    return from
  }
  const mask = (1 << width) - 1
  let at = from
  let held = 0
  let heldBits = 0
  for (let i = start; i < end; i++) {
    while (heldBits < width) {
      held |= bytes[at++]! << heldBits
      heldBits += 8
    }
    const z = held & mask
    held >>>= width
    heldBits -= width
    target[i] = (z >>> 1) ^ -(z & 1)
  }
  return at
}

function unpackWide(
  bytes: Uint8Array,
  from: number,
  width: number,
  target: Float64Array,
  start: number,
  end: number,
): number {
  let at = from
  let held = 0
  let heldBits = 0
  for (let i = start; i < end; i++) {
    let z = 0
    let factor = 1
    for (let bits = width; bits > 0; bits -= 24) {
      const chunkBits = Math.min(bits, 24)
      while (heldBits < chunkBits) {
        held |= bytes[at++]! << heldBits
        heldBits += 8
      }
      z += (held & ((1 << chunkBits) - 1)) * factor
      factor *= 0x100_0000
      held >>>= chunkBits
      heldBits -= chunkBits
    }
    target[i] = z % 2 === 0 ? z / 2 : -(z + 1) / 2
  }
  return at
}
