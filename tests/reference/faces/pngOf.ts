import { crc32, deflateSync } from 'node:zlib'

function chunk(kind: string, content: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(kind, 'latin1'), content])
  const framed = Buffer.alloc(named.length + 8)
  framed.writeUInt32BE(content.length)
  named.copy(framed, 4)
  framed.writeUInt32BE(crc32(named), framed.length - 4)
  return framed
}

/** A PNG picture (ISO/IEC 15948) of opaque pixels, given as red, green, blue and opacity. */
export function pngOf({ width, height, pixels }: { width: number; height: number; pixels: Uint8ClampedArray }): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.set([8, 6, 0, 0, 0], 8)
  const rows = Buffer.alloc(height * (4 * width + 1))
  for (let y = 0; y < height; y++)
    rows.set(pixels.subarray(4 * width * y, 4 * width * (y + 1)), y * (4 * width + 1) + 1)
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 1 })),
    chunk('IEND', new Uint8Array()),
  ])
}
