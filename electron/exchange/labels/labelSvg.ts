import type { LabelSheet } from '#contract/programme/labelSheet.ts'
import { codeSideMm } from '#domain/programme/labels/sheetGeometry.ts'
import { escapeText } from '#figures/drawing/escapeText.ts'
import { digitEm, fittedLines, lineStep } from './fittedLines.ts'
import { qrCode } from './qrCode.ts'

/** What stands on one label: the number in large type and as a code, its group in small. */
export type Label = { number: string; group: string }

/** Free on each side of the text, and between number and group; in mm. */
const padMm = 0.8
const groupEm = { leastMm: 1.7, mostMm: 2.6 }

/** One label as SVG text, its upper left corner at a place of the page; all lengths in mm. */
export function labelSvg({ number, group }: Label, place: { xMm: number; yMm: number }, sheet: LabelSheet): string {
  const { labelWidthMm, labelHeightMm } = sheet
  const side = codeSideMm(sheet)
  const codeTop = (labelHeightMm - side) / 2
  const code = qrCode(number)
  const text = { xMm: side, widthMm: labelWidthMm - side - padMm }
  const numberMm = Math.min(text.widthMm / (digitEm * [...number].length), labelHeightMm * 0.4)
  const groupHeightMm = labelHeightMm - 2 * padMm - lineStep * numberMm
  const fitted = fittedLines(group, { widthMm: text.widthMm, heightMm: groupHeightMm }, groupEm)
  // Number and group stand together in the middle of the height
  const blockMm = lineStep * (numberMm + fitted.lines.length * fitted.emMm)
  const baseline = (labelHeightMm - blockMm) / 2 + numberMm
  const lines = fitted.lines.map((line, index) => {
    const y = baseline + lineStep * fitted.emMm * (index + 1)
    return `<text x="${mm(text.xMm)}" y="${mm(y)}" font-size="${mm(fitted.emMm)}">${escapeText(line)}</text>`
  })
  const outline = sheet.outlined
    ? `<path fill="none" stroke="#999" stroke-width="0.1" d="M0 0h${mm(labelWidthMm)}v${mm(labelHeightMm)}h${mm(-labelWidthMm)}z"/>`
    : ''
  return (
    `<g transform="translate(${mm(place.xMm)} ${mm(place.yMm)})">${outline}` +
    `<path transform="translate(0 ${mm(codeTop)}) scale(${side / code.sideModules})" d="${code.path}"/>` +
    `<text font-weight="bold" x="${mm(text.xMm)}" y="${mm(baseline)}" font-size="${mm(numberMm)}">${escapeText(number)}</text>` +
    `${lines.join('')}</g>`
  )
}

/** A hundredth of what anybody could measure. */
function mm(value: number): number {
  return Math.round(value * 10_000) / 10_000
}
