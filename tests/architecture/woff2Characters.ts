import { brotliDecompressSync } from 'node:zlib'

/** Tables whose data has another form inside the file unless a version says otherwise: `glyf` and `loca`. */
const formedAnew = [10, 11]
const characterTable = 0

/**
 * The characters that a typeface file has letters for, as code points. Source of the form: W3C, WOFF File Format 2.0, sections
 * 4 and 5, for the file; ISO/IEC 14496-22, "cmap", formats 4 and 12, for the table of characters.
 */
export function woff2Characters(file: Buffer): Set<number> {
  if (file.toString('latin1', 0, 4) !== 'wOF2') throw new TypeError('woff2Characters requires a WOFF2 file')
  let at = 48
  const number = () => {
    let value = 0
    for (;;) {
      const byte = file[at++]!
      value = value * 128 + (byte & 127)
      if (byte < 128) return value
    }
  }
  let start = 0
  let found: { from: number; to: number } | null = null
  for (let tables = file.readUInt16BE(12); tables > 0; tables--) {
    const flags = file[at++]!
    const tag = flags & 63
    const version = flags >> 6
    if (tag === 63) at += 4
    const plain = number()
    const isFormedAnew = formedAnew.includes(tag) ? version === 0 : version !== 0
    const length = isFormedAnew ? number() : plain
    if (tag === characterTable) found = { from: start, to: start + length }
    start += length
  }
  if (found === null) throw new TypeError('woff2Characters requires a table of characters')
  const data = brotliDecompressSync(file.subarray(at, at + file.readUInt32BE(20)))
  return charactersOf(data.subarray(found.from, found.to))
}

function charactersOf(table: Buffer): Set<number> {
  const characters = new Set<number>()
  for (let i = 0; i < table.readUInt16BE(2); i++) {
    const part = table.subarray(table.readUInt32BE(4 + 8 * i + 4))
    const format = part.readUInt16BE(0)
    for (const [from, to] of format === 4 ? ranges4(part) : format === 12 ? ranges12(part) : [])
      for (let character = from; character <= to && character !== 0xffff; character++) characters.add(character)
  }
  return characters
}

function ranges4(part: Buffer): [number, number][] {
  const doubled = part.readUInt16BE(6)
  return Array.from({ length: doubled / 2 }, (_, i) => [
    part.readUInt16BE(16 + doubled + 2 * i),
    part.readUInt16BE(14 + 2 * i),
  ])
}

function ranges12(part: Buffer): [number, number][] {
  return Array.from({ length: part.readUInt32BE(12) }, (_, i) => [
    part.readUInt32BE(16 + 12 * i),
    part.readUInt32BE(20 + 12 * i),
  ])
}
