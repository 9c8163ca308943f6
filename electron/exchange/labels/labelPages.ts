import { Trouble } from '#contract/errors.ts'
import type { ChainHead } from '#contract/keeping/archive.ts'
import type { LabelSheet } from '#contract/programme/labelSheet.ts'
import { labelPlaces, notesMm, sheetFault } from '#domain/programme/labels/sheetGeometry.ts'
import { escapeText } from '#figures/drawing/escapeText.ts'
import { barWords, headOnSheet, labelsTitle, sheetFaultWords, sheetTitle } from '#words/programme/labelWords.ts'
import { type Label, labelSvg } from './labelSvg.ts'

/** The end of the archive's chain, which every page carries; null: it has none yet. */
export type PrintedHead = Pick<ChainHead, 'count' | 'hash'> | null

/** As the page stands in programs of other kinds too, no style sheet says how it looks. */
const typeface = `font-family="Roboto, 'Liberation Sans', 'DejaVu Sans', Arial, sans-serif"`
const barMm = 100
const noteEmMm = 2
const noteLineMm = 3
const allPages = { from: 0, count: Number.POSITIVE_INFINITY }

/**
 * Labels as pages, each an SVG text in exact millimetres: how many there are, and those that are wanted. Title, head of the chain
 * and a bar of 100 mm stand in the margins above and below; where the labels leave none, on a last page of their own. Throws a
 * Trouble for a sheet that cannot be printed.
 */
export function labelPages(
  labels: readonly Label[],
  sheet: LabelSheet,
  head: PrintedHead,
  { from, count }: { from: number; count: number } = allPages,
): { pages: number; drawn: string[] } {
  const fault = sheetFault(sheet)
  if (fault !== null) throw new Trouble('invalid-input', ...sheetFaultWords[fault])
  const places = labelPlaces(sheet)
  const onPages = Math.ceil(labels.length / places.length)
  const ownPage = marginMm(sheet) < notesMm
  const pages = onPages + (ownPage ? 1 : 0)
  const title = titleOf(labels)
  const drawn: string[] = []
  for (let page = from; page < Math.min(pages, from + count); page++) {
    const here = labels.slice(page * places.length, (page + 1) * places.length)
    const shown = here.map((label, index) => labelSvg(label, places[index]!, sheet)).join('')
    const noted = !ownPage || page === onPages ? notesSvg(sheetTitle(title, page + 1, pages), head, sheet) : ''
    drawn.push(pageSvg(shown + noted, sheet))
  }
  return { pages, drawn }
}

/** What sheets of labels are called: by their first number and their last. */
export function titleOf(labels: readonly Label[]): string {
  return labelsTitle(labels[0]?.number ?? '', labels.at(-1)?.number ?? '')
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

function notesSvg(title: string, head: PrintedHead, { pageHeightMm, leftMm }: LabelSheet): string {
  const x = Math.max(leftMm, 6)
  const text = (words: string, yMm: number) =>
    `<text x="${x}" y="${yMm}" font-size="${noteEmMm}">${escapeText(words)}</text>`
  const barTop = pageHeightMm - 5
  return (
    text(title, 6) +
    (head === null ? '' : text(headOnSheet(head), 6 + noteLineMm)) +
    text(barWords, barTop - 1.5) +
    `<path fill="none" stroke="#000" stroke-width="0.25" d="M${x} ${barTop - 1}v2M${x} ${barTop}h${barMm}m0 -1v2"/>`
  )
}
