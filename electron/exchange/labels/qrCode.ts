import { encode } from 'uqr'

/** A QR code (ISO/IEC 18004) as the outline of its dark modules, in modules from the corner of its quiet border. */
export type QrCode = { sideModules: number; path: string }

/** Light modules around the code, as the standard asks for. */
const borderModules = 4

/**
 * The code of a text with its quiet border, at the highest level of error correction (H) while it fits the smallest code, else at
 * level M, whose modules are larger.
 */
export function qrCode(text: string): QrCode {
  const highest = encode(text, { ecc: 'H', border: borderModules })
  const { data, size } = highest.version === 1 ? highest : encode(text, { ecc: 'M', border: borderModules })
  return { sideModules: size, path: data.map((row, y) => darkRuns(row, y)).join('') }
}

/** Each run of dark modules of one row as a closed rectangle. */
function darkRuns(row: readonly boolean[], y: number): string {
  let path = ''
  for (let x = 0; x < row.length; x++) {
    if (!row[x]) continue
    const from = x
    while (row[x + 1]) x++
    path += `M${from} ${y}h${x + 1 - from}v1h${from - x - 1}z`
  }
  return path
}
