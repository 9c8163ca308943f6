import type { LabelSheet } from '#contract/programme/labelSheet.ts'

/** Pages that printers take, in mm: ISO 216 A4, ANSI Y14.1 A (8.5 in x 11 in). */
export const pageSizes = {
  A4: { pageWidthMm: 210, pageHeightMm: 297 },
  Letter: { pageWidthMm: 215.9, pageHeightMm: 279.4 },
} as const
export type PageSize = keyof typeof pageSizes

/** What most printers cannot reach at the sides, and the room for the notes at top and bottom; in mm. */
const sideMm = 6
export const notesMm = 12
/** The smallest code on a label that a phone or scanner reads without fuss, without its quiet border; in mm. */
export const leastCodeMm = 8
/** Share of the label's width that the code may take with its border, and what it leaves free above and below, in mm. */
const codeShare = 0.45
const codeFreeMm = 0.6

/** A page filled with so many columns and rows of labels, with lines to cut along. */
export function sheetOfGrid(page: PageSize, columns: number, rows: number): LabelSheet {
  const size = pageSizes[page]
  return {
    ...size,
    columns,
    rows,
    labelWidthMm: (size.pageWidthMm - 2 * sideMm) / columns,
    labelHeightMm: (size.pageHeightMm - 2 * notesMm) / rows,
    leftMm: sideMm,
    topMm: notesMm,
    gapAcrossMm: 0,
    gapDownMm: 0,
    outlined: true,
  }
}

/** As many labels of an own size as a page holds, at least one, in its middle, with lines to cut along. */
export function sheetOfSize(page: PageSize, labelWidthMm: number, labelHeightMm: number): LabelSheet {
  const { pageWidthMm, pageHeightMm } = pageSizes[page]
  const columns = Math.max(1, Math.floor((pageWidthMm - 2 * sideMm) / labelWidthMm))
  const rows = Math.max(1, Math.floor((pageHeightMm - 2 * notesMm) / labelHeightMm))
  return {
    ...{ pageWidthMm, pageHeightMm, columns, rows, labelWidthMm, labelHeightMm },
    leftMm: Math.max(0, (pageWidthMm - columns * labelWidthMm) / 2),
    topMm: Math.max(0, (pageHeightMm - rows * labelHeightMm) / 2),
    ...{ gapAcrossMm: 0, gapDownMm: 0, outlined: true },
  }
}

/** Upper left corners of a page's labels in mm, row by row. */
export function labelPlaces(sheet: LabelSheet): { xMm: number; yMm: number }[] {
  return Array.from({ length: sheet.columns * sheet.rows }, (_, index) => ({
    xMm: sheet.leftMm + (index % sheet.columns) * (sheet.labelWidthMm + sheet.gapAcrossMm),
    yMm: sheet.topMm + Math.floor(index / sheet.columns) * (sheet.labelHeightMm + sheet.gapDownMm),
  }))
}

/** The side of a label's code with its quiet border, in mm. */
export function codeSideMm({ labelWidthMm, labelHeightMm }: LabelSheet): number {
  return Math.min(labelHeightMm - codeFreeMm, labelWidthMm * codeShare)
}

/** Modules across the smallest code with a border of four on each side, as ISO/IEC 18004 asks for, and without. */
export const smallestCode = { withBorder: 29, modules: 21 }

/** Why a sheet cannot be printed: labels reach over the edge, or are too small for a code that can be read; null: it can. */
export function sheetFault(sheet: LabelSheet): 'too-wide' | 'too-high' | 'too-small' | null {
  // A tenth of a millimetre nobody sees, and inches do not come out even
  const tolerance = 0.1
  const { columns, rows, labelWidthMm, labelHeightMm, gapAcrossMm, gapDownMm } = sheet
  const across = sheet.leftMm + columns * labelWidthMm + (columns - 1) * gapAcrossMm
  const down = sheet.topMm + rows * labelHeightMm + (rows - 1) * gapDownMm
  if (across > sheet.pageWidthMm + tolerance) return 'too-wide'
  if (down > sheet.pageHeightMm + tolerance) return 'too-high'
  const codeMm = (codeSideMm(sheet) * smallestCode.modules) / smallestCode.withBorder
  return codeMm < leastCodeMm ? 'too-small' : null
}
