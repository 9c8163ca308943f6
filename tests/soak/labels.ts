import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { LabelSheet } from '#contract/programme/labelSheet.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import { sheetOfGrid, sheetOfSize } from '#domain/programme/labels/sheetGeometry.ts'
import { labelHtml } from '#exchange/labels/labelHtml.ts'
import { labelPages } from '#exchange/labels/labelPages.ts'
import { printByChromium } from '#exchange/pdf/chromiumPdf.ts'
import { findChromium } from '#exchange/pdf/findChromium.ts'
import { nextRunnings } from '#tests/fakes/programme/nextRunnings.ts'
import { canReadPdf, type PrintedLabels, readPrinted } from './printedLabels.ts'

/** No part of a label lies farther from its place, in mm. */
export const mostOffMm = 0.2

const sheets: Record<string, LabelSheet> = {
  'A4, 5 x 13': sheetOfGrid('A4', 5, 13),
  'A4, labels of 63.5 mm x 38 mm': sheetOfSize('A4', 63.5, 38),
  'Letter, 4 x 10': sheetOfGrid('Letter', 4, 10),
}

/**
 * Prints as many labels as the first word says (1,728) on sheets of three kinds and reads every code and every place back from
 * the pages at 300 dpi. Needs a Chromium and poppler's tools.
 */
export async function soak(words: readonly string[]): Promise<boolean> {
  const count = Number(words[0] ?? 1728)
  if (!Number.isInteger(count) || count < 1) throw new RangeError('labels takes a number of labels')
  const chromium = findChromium(process.env)
  if (chromium === null || !(await canReadPdf())) {
    console.log('FAILED not run: Chromium and pdftoppm (poppler-utils) must be there')
    return false
  }
  let held = true
  for (const [name, sheet] of Object.entries(sheets)) {
    const { tried, read, worstCodeMm, worstTextMm, faults } = await printAndRead(chromium, count, sheet)
    const holds = read === tried && worstCodeMm <= mostOffMm && worstTextMm <= mostOffMm
    held &&= holds
    for (const fault of faults) console.log(`  ${fault}`)
    console.log(
      `${holds ? 'held  ' : 'FAILED'} ${name}: tried ${tried} labels, read ${read}; worst offset of a code ` +
        `${worstCodeMm.toFixed(3)} mm, of a number ${worstTextMm.toFixed(3)} mm (${mostOffMm} mm allowed)`,
    )
  }
  return held
}

/** Prints labels of running numbers from 1001 on and reads them back. */
export async function printAndRead(chromium: string, count: number, sheet: LabelSheet): Promise<PrintedLabels> {
  const numbers = nextRunnings(1000, count).map((running) => labelOf(running)!)
  const group = 'resorcinol R2, long grain to long grain, tight joint, bilge, 12 months'
  const head = { count: 4312, hash: 'c0ffee'.repeat(10) }
  const { drawn } = labelPages(
    numbers.map((number) => ({ number, group })),
    sheet,
    head,
  )
  const folder = await mkdtemp(join(tmpdir(), 'breakledger-labels-'))
  try {
    const file = join(folder, 'labels.pdf')
    await writeFile(file, await printByChromium(chromium, labelHtml(drawn, sheet, 'Labels')))
    return await readPrinted(file, numbers, sheet)
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}
