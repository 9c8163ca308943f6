import { Trouble } from '#contract/errors.ts'
import type { LabelChoice } from '#contract/programme/labelProcedures.ts'
import type { LabelSheet } from '#contract/programme/labelSheet.ts'
import { type PageSize, sheetOfGrid, sheetOfSize } from '#domain/programme/labels/sheetGeometry.ts'
import { printByChromium } from '#exchange/pdf/chromiumPdf.ts'
import { findChromium } from '#exchange/pdf/findChromium.ts'
import { writeWholeFile } from '#exchange/wholeFile.ts'
import { readArchive } from '../core/readArchive.ts'
import { labelsToPrint } from './labelSheets.ts'
import { calendarOfStudy } from './pullHandlers.ts'

/** A sheet as somebody asks for it: so many columns and rows on a page, or labels of a size in mm. */
export type SheetWish = { page: PageSize } & (
  | { grid: readonly [number, number] }
  | { sizeMm: readonly [number, number] }
)

function sheetOf(wish: SheetWish): LabelSheet {
  return 'grid' in wish ? sheetOfGrid(wish.page, ...wish.grid) : sheetOfSize(wish.page, ...wish.sizeMm)
}

/** How this machine prints without a window: by a Chromium that is found on it; null: none is. */
export function machinePrinter(
  environment: Readonly<Record<string, string | undefined>>,
): ((html: string, signal?: AbortSignal) => Promise<Uint8Array<ArrayBuffer>>) | null {
  const chromium = findChromium(environment)
  return chromium === null ? null : (html, signal) => printByChromium(chromium, html, signal)
}

/**
 * Writes the labels of a choice as PDF, or as the HTML page that is printed, when the file is called so. Rejects with a Trouble
 * where there is no label, the sheet cannot be printed, or nothing is found that prints; `cancelled` when it was stopped.
 */
export async function writeLabels(
  archive: { path: string; program: string },
  asked: { choice: LabelChoice; sheet: SheetWish },
  file: string,
  environment: Readonly<Record<string, string | undefined>>,
  signal?: AbortSignal,
): Promise<{ labels: number; pages: number; file: string }> {
  try {
    const { labels, pages, html } = await readArchive(archive.path, archive.program, (open) =>
      labelsToPrint(open, asked.choice, sheetOf(asked.sheet), signal),
    )
    const content = /\.html?$/i.test(file) ? html : await pdfOf(html, environment, signal)
    signal?.throwIfAborted()
    await writeWholeFile(file, content)
    return { labels, pages, file }
  } catch (thrown) {
    if (!signal?.aborted) throw thrown
    throw new Trouble(
      'cancelled',
      `Writing ${file} was stopped; what stood there before is as it was.`,
      'Give the same command again when it suits.',
    )
  }
}

function pdfOf(html: string, environment: Readonly<Record<string, string | undefined>>, signal?: AbortSignal) {
  const print = machinePrinter(environment)
  if (print !== null) return print(html, signal)
  throw new Trouble(
    'unsupported',
    'No Chromium was found on this machine, and a PDF is printed by one.',
    'Install Chromium, or name one with CHROMIUM_PATH; or give a name that ends in .html, and print that page from any browser at 100 %.',
  )
}

/** Writes the pulls of a study as a calendar file. Rejects with a Trouble where it has none, or the file cannot be written. */
export async function writeCalendar(
  archive: { path: string; program: string },
  studyId: number,
  file: string,
  writtenAt: string,
): Promise<{ events: number; file: string }> {
  const { events, text } = await readArchive(archive.path, archive.program, (open) =>
    calendarOfStudy(open, studyId, writtenAt),
  )
  await writeWholeFile(file, text)
  return { events, file }
}
