import { builtInFormat, type NumberFormat, readNumberFormat } from './numberFormat.ts'
import type { Fill } from './sheet.ts'
import { attributeOf, type ElementHandlers } from './xmlElements.ts'

/** How a cell looks, as far as it says something of its value. */
export type CellStyle = { readonly format: NumberFormat; readonly fill: Fill }

/** A cell without a style. */
export const noStyle: CellStyle = { format: builtInFormat(0), fill: null }

/** Gathers the styles of a file, in the order in which its cells name them (the index is the attribute `s` of a cell). */
export function gatherStyles(): ElementHandlers & { styles(): CellStyle[] } {
  const formats = new Map<number, NumberFormat>()
  const fills: Fill[] = []
  const used: { format: number; fill: number }[] = []
  const inside: string[] = []
  const handlers = {
    numFmt(attributes: Readonly<Record<string, string>>) {
      formats.set(Number(attributes.numFmtId), readNumberFormat(attributes.formatCode ?? ''))
    },
    fill() {
      if (inside.includes('fills')) fills.push(null)
    },
    patternFill(attributes: Readonly<Record<string, string>>) {
      const pattern = attributes.patternType ?? 'none'
      if (fills.length > 0 && inside.includes('fills') && pattern !== 'none' && pattern !== 'solid')
        fills[fills.length - 1] = 'pattern'
      solid = pattern === 'solid'
    },
    gradientFill() {
      if (fills.length > 0 && inside.includes('fills')) fills[fills.length - 1] = 'pattern'
    },
    fgColor(attributes: Readonly<Record<string, string>>) {
      if (solid && fills.length > 0 && inside.includes('fills')) fills[fills.length - 1] = colour(attributes)
    },
    xf(attributes: Readonly<Record<string, string>>) {
      if (inside.includes('cellXfs'))
        used.push({ format: Number(attributes.numFmtId ?? 0), fill: Number(attributes.fillId ?? 0) })
    },
  }
  let solid = false
  return {
    open(name, attributes) {
      if (Object.hasOwn(handlers, name)) handlers[name as keyof typeof handlers](attributes)
      inside.push(name)
    },
    close() {
      inside.pop()
    },
    styles: () =>
      used.map(({ format, fill }) => ({
        format: formats.get(format) ?? builtInFormat(format),
        fill: fills[fill] ?? null,
      })),
  }
}

function colour(attributes: Readonly<Record<string, string>>): Fill {
  const rgb = attributeOf(attributes, 'rgb')
  if (rgb !== undefined) return /^[0-9a-f]{6,8}$/i.test(rgb) ? rgb.slice(-6).toUpperCase() : 'pattern'
  if (attributes.theme !== undefined) {
    const tint = Number(attributes.tint ?? 0)
    const shade = tint === 0 || !Number.isFinite(tint) ? '' : ` ${tint < 0 ? '-' : '+'}${Math.abs(tint).toFixed(2)}`
    return `theme ${attributes.theme}${shade}`
  }
  const indexed = Number(attributes.indexed ?? Number.NaN)
  return indexedColours[indexed < 8 ? indexed : indexed - 8] ?? 'pattern'
}

/** The palette of older files (ECMA-376 part 1, 18.8.27): numbers 0 to 7 stand again as 8 to 15. */
const indexedColours: readonly string[] = (
  '000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF 00FFFF 800000 008000 000080 808000 800080 008080 C0C0C0 808080 ' +
  '9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF 000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF ' +
  '00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99 3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 ' +
  '003366 339966 003300 333300 993300 993366 333399 333333'
).split(' ')
