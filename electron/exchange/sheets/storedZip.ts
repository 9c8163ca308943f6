import { crc32 } from 'node:zlib'

/** Names are UTF-8. */
const flags = 0x0800
/** 1 January 1980, the first day that the format knows: the same parts give the same bytes on every day. */
const firstDay = 0x0021
const version = 20

/**
 * A packed file (.zip) of a few small parts, none of them compressed.
 *
 * Source: APPNOTE.TXT 6.3, sections 4.3.7 (local header), 4.3.12 (central directory) and 4.3.16 (its end).
 * Checked: tests/exchange/sheets/storedZip.spec.ts against yauzl.
 */
export function storedZip(parts: Readonly<Record<string, string>>): Buffer {
  const written: Buffer[] = []
  const directory: Buffer[] = []
  let offset = 0
  for (const [path, text] of Object.entries(parts)) {
    const name = Buffer.from(path)
    const content = Buffer.from(text)
    const common = commonFields(name, content)
    const local = Buffer.concat([uint32(0x04034b50), uint16(version), common, name, content])
    // Comment, disk, attributes within and without: none
    const rest = Buffer.concat([uint16(0), uint16(0), uint16(0), uint32(0), uint32(offset)])
    directory.push(Buffer.concat([uint32(0x02014b50), uint16(version), uint16(version), common, rest, name]))
    written.push(local)
    offset += local.length
  }
  const central = Buffer.concat(directory)
  const count = uint16(directory.length)
  const end = [
    uint32(0x06054b50),
    uint16(0),
    uint16(0),
    count,
    count,
    uint32(central.length),
    uint32(offset),
    uint16(0),
  ]
  return Buffer.concat([...written, central, ...end])
}

/** What stands in both headers of a part: flags, method, time, day, checksum, two sizes, and the lengths of name and extra field. */
function commonFields(name: Buffer, content: Buffer): Buffer {
  const size = uint32(content.length)
  const times = [uint16(0), uint16(firstDay)]
  return Buffer.concat([
    ...[uint16(flags), uint16(0), ...times, uint32(crc32(content)), size, size],
    ...[uint16(name.length), uint16(0)],
  ])
}

function uint16(value: number): Buffer {
  const bytes = Buffer.alloc(2)
  bytes.writeUInt16LE(value)
  return bytes
}

function uint32(value: number): Buffer {
  const bytes = Buffer.alloc(4)
  bytes.writeUInt32LE(value)
  return bytes
}
