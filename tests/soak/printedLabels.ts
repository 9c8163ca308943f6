import { execFile } from 'node:child_process'
import { promisify } from 'node:util'
import jsQR from 'jsqr'
import type { LabelSheet } from '#contract/programme/labelSheet.ts'
import { codeSideMm, labelPlaces, smallestCode } from '#domain/programme/labels/sheetGeometry.ts'

const run = promisify(execFile)
const dotsPerInch = 300
const dotsPerMm = dotsPerInch / 25.4
const pointsPerMm = 72 / 25.4

/** What was found on printed sheets: codes that said their number, and how far anything lay from its place; in mm. */
export type PrintedLabels = { tried: number; read: number; worstCodeMm: number; worstTextMm: number; faults: string[] }

/** Whether pages can be drawn and their words found: poppler's tools are there. */
export async function canReadPdf(): Promise<boolean> {
  return run('pdftoppm', ['-v']).then(
    () => true,
    () => false,
  )
}

/** Reads sheets of labels from a PDF as somebody else would: codes by jsqr from pages drawn at 300 dpi, numbers by pdftotext. */
export async function readPrinted(pdf: string, numbers: readonly string[], sheet: LabelSheet): Promise<PrintedLabels> {
  const places = labelPlaces(sheet)
  const found: PrintedLabels = { tried: numbers.length, read: 0, worstCodeMm: 0, worstTextMm: 0, faults: [] }
  const words = await wordsOf(pdf)
  for (let page = 0; page * places.length < numbers.length; page++) {
    const drawn = await drawnPage(pdf, page + 1)
    for (const [index, number] of numbers.slice(page * places.length, (page + 1) * places.length).entries()) {
      const code = codeAt(drawn, places[index]!, sheet)
      if (code?.data !== number) {
        found.faults.push(`page ${page + 1}, label ${number}: ${code === null ? 'no code was read' : `"${code.data}"`}`)
        continue
      }
      found.read++
      found.worstCodeMm = Math.max(found.worstCodeMm, code.offMm)
    }
    found.worstTextMm = Math.max(found.worstTextMm, ...textOffsets(words[page] ?? [], numbers, page, sheet))
  }
  return found
}

type Drawn = { width: number; height: number; grey: Uint8Array }

async function drawnPage(pdf: string, page: number): Promise<Drawn> {
  const options = { encoding: 'buffer', maxBuffer: 1e9 } as const
  const { stdout } = await run(
    'pdftoppm',
    ['-r', `${dotsPerInch}`, '-gray', '-f', `${page}`, '-l', `${page}`, pdf],
    options,
  )
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(stdout.subarray(0, 64).toString('latin1'))
  if (header === null) throw new Error('pdftoppm wrote no grey map')
  return { width: Number(header[1]), height: Number(header[2]), grey: stdout.subarray(header[0].length) }
}

/** The code of one label, cut out of the page, and how far the farthest of its edges lies from where it should. */
function codeAt(page: Drawn, place: { xMm: number; yMm: number }, sheet: LabelSheet) {
  const left = Math.round(place.xMm * dotsPerMm)
  const top = Math.round(place.yMm * dotsPerMm)
  const width = Math.min(Math.round(sheet.labelWidthMm * dotsPerMm), page.width - left)
  const height = Math.min(Math.round(sheet.labelHeightMm * dotsPerMm), page.height - top)
  const cut = new Uint8ClampedArray(width * height * 4).fill(255)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      cut.fill(page.grey[(top + y) * page.width + left + x]!, 4 * (y * width + x), 4 * (y * width + x) + 3)
  const code = jsQR(cut, width, height, { inversionAttempts: 'dontInvert' })
  if (code === null) return null
  const side = codeSideMm(sheet)
  const borderMm = (side * (smallestCode.withBorder - smallestCode.modules)) / 2 / smallestCode.withBorder
  const codeTop = place.yMm + (sheet.labelHeightMm - side) / 2
  const box = darkBox(page, { xMm: place.xMm + borderMm / 2, yMm: codeTop + borderMm / 2, sideMm: side - borderMm })
  const offMm = Math.max(
    ...[box.left - place.xMm, box.top - codeTop].map((from) => Math.abs(from - borderMm)),
    ...[box.right - place.xMm, box.bottom - codeTop].map((to) => Math.abs(to - side + borderMm)),
  )
  return { data: code.data, offMm }
}

/** The edges of all that is dark in a square of the page, in mm; the decoder's own corners are guesses to a pixel or two. */
function darkBox(page: Drawn, { xMm, yMm, sideMm }: { xMm: number; yMm: number; sideMm: number }) {
  const at = (mm: number) => Math.round(mm * dotsPerMm)
  const box = { left: Number.POSITIVE_INFINITY, top: Number.POSITIVE_INFINITY, right: 0, bottom: 0 }
  for (let y = at(yMm); y < at(yMm + sideMm); y++)
    for (let x = at(xMm); x < at(xMm + sideMm); x++) {
      if (page.grey[y * page.width + x]! > 127) continue
      box.left = Math.min(box.left, x / dotsPerMm)
      box.top = Math.min(box.top, y / dotsPerMm)
      box.right = Math.max(box.right, (x + 1) / dotsPerMm)
      box.bottom = Math.max(box.bottom, (y + 1) / dotsPerMm)
    }
  return box
}

type Word = { text: string; xMm: number; bottomMm: number }

async function wordsOf(pdf: string): Promise<Word[][]> {
  const { stdout } = await run('pdftotext', ['-bbox', pdf, '-'], { maxBuffer: 1e9 })
  return stdout
    .split('<page ')
    .slice(1)
    .map((page) =>
      [...page.matchAll(/<word xMin="([\d.]+)" yMin="[\d.]+" xMax="[\d.]+" yMax="([\d.]+)">([^<]*)</g)].map(
        ([, x, bottom, text]) => ({
          text: text!,
          xMm: Number(x) / pointsPerMm,
          bottomMm: Number(bottom) / pointsPerMm,
        }),
      ),
    )
}

/**
 * How far each number of a page lies from its place: across from the edge of its code, down from the first number of its length
 * on the page, since what lies under the baseline depends on the typeface. A number that is not there lies infinitely far.
 */
function textOffsets(words: readonly Word[], numbers: readonly string[], page: number, sheet: LabelSheet): number[] {
  const places = labelPlaces(sheet)
  const firstOfLength = new Map<number, number>()
  return numbers.slice(page * places.length, (page + 1) * places.length).flatMap((number, index) => {
    const { xMm, yMm } = places[index]!
    // The head of the sheet names the first number and the last one too, above all labels
    const word = words.find(({ text, bottomMm }) => text === number && bottomMm > yMm)
    if (word === undefined) return [Number.POSITIVE_INFINITY]
    const below = word.bottomMm - yMm
    const first = firstOfLength.get(number.length) ?? below
    firstOfLength.set(number.length, first)
    return [Math.abs(word.xMm - xMm - codeSideMm(sheet)), Math.abs(below - first)]
  })
}
