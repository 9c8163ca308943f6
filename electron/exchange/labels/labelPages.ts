import type { ChainHead } from '#contract/keeping/archive.ts'
import type { LabelSheet } from '#contract/programme/labelSheet.ts'
import { labelPlaces, notesMm } from '#domain/programme/labels/sheetGeometry.ts'
import { escapeText } from '#figures/drawing/escapeText.ts'
import { barWords, headOnSheet, sheetTitle } from '#words/programme/labelWords.ts'
import { type Label, labelSvg } from './labelSvg.ts'

/** What is printed at the edges of every page; `head`: the end of the archive's chain, null when it has none yet. */
export type SheetNotes = { title: string; head: Pick<ChainHead, 'count' | 'hash'> | null }

/** As the page stands in programs of other kinds too, no style sheet says how it looks. */
const typeface = `font-family="Roboto, 'Liberation Sans', 'DejaVu Sans', Arial, sans-serif"`
const barMm = 100
const noteEmMm = 2
const noteLineMm = 3

/**
 * Labels as pages, each an SVG text in exact millimetres. Title, head of the chain and a bar of 100 mm stand in the margins above
 * and below; where the labels leave none, on a last page of their own.
 */
export function labelPages(labels: readonly Label[], sheet: LabelSheet, notes: SheetNotes): string[] {
  const places = labelPlaces(sheet)
  const onPages = Math.ceil(labels.length / places.length)
  const ownPage = marginMm(sheet) < notesMm
  const pages = onPages + (ownPage ? 1 : 0)
  return Array.from({ length: pages }, (_, page) => {
    const here = labels.slice(page * places.length, (page + 1) * places.length)
    const drawn = here.map((label, index) => labelSvg(label, places[index]!, sheet)).join('')
    const noted = !ownPage || page === onPages ? notesSvg(notes, page + 1, pages, sheet) : ''
    return pageSvg(drawn + noted, sheet)
  })
}

/** The smaller of the margins above and below the labels, in mm. */
function marginMm({ topMm, rows, labelHeightMm, gapDownMm, pageHeightMm }: LabelSheet): number {
  return Math.min(topMm, pageHeightMm - topMm - rows * labelHeightMm - (rows - 1) * gapDownMm)
}

function pageSvg(content: string, { pageWidthMm, pageHeightMm }: LabelSheet): string {
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="label-page" ${typeface} width="${pageWidthMm}mm" height="${pageHeightMm}mm" ` +
    `viewBox="0 0 ${pageWidthMm} ${pageHeightMm}">${content}</svg>`
  )
}

function notesSvg(notes: SheetNotes, page: number, pages: number, { pageHeightMm, leftMm }: LabelSheet): string {
  const x = Math.max(leftMm, 6)
  const text = (words: string, yMm: number) =>
    `<text x="${x}" y="${yMm}" font-size="${noteEmMm}">${escapeText(words)}</text>`
  const barTop = pageHeightMm - 5
  const head = notes.head === null ? '' : text(headOnSheet(notes.head), 6 + noteLineMm)
  return (
    text(sheetTitle(notes.title, page, pages), 6) +
    head +
    text(barWords, barTop - 1.5) +
    `<path fill="none" stroke="#000" stroke-width="0.25" d="M${x} ${barTop - 1}v2M${x} ${barTop}h${barMm}m0 -1v2"/>`
  )
}
