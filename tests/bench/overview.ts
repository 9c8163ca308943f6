import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { openArchive } from '#archive/openArchive.ts'
import { overviewFilter } from '#contract/findings/overview.ts'
import { overviewGroups } from '#domain/findings/overview/overviewGroups.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { svgText } from '#figures/drawing/svgText.ts'
import { overviewFigure } from '#figures/findings/overview/overviewFigure.ts'
import { buildIfNeeded } from '#shells/start/build.ts'
import { chromiumPath, openBrowser } from '#tests/browser/harness/chromium.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { startLiveHost } from './childProcesses.ts'
import { frameMeasurements, watchFrames } from './frameWatch.ts'
import { type Benchmark, type Measurement, medianMs } from './measurement.ts'

const instant = '2031-05-02T09:30:00.000Z'
/** Blocks on the page, and those of an archive whose question alone is timed. */
const shown = 10_000
const many = 100_000
const perGroup = 12
const mostMs = { question: 1000, task: 100 }

/** Every block of a programme on one page: the question, the drawing, and the page in Chromium with real wheel, pointer and keys. */
export const overviewBenchmark: Benchmark = async () => {
  if (chromiumPath === null) return { because: 'there is no Chromium on this machine; name one with CHROMIUM_PATH' }
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-bench-'))
  try {
    await buildIfNeeded('page')
    const path = join(folder, 'overview.breakledger')
    return [...(await questions(folder, path)), ...(await onThePage(path))]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

async function questions(folder: string, path: string): Promise<Measurement[]> {
  const measurements: Measurement[] = []
  for (const [blocks, file] of [
    [shown, path],
    [many, join(folder, 'many.breakledger')],
  ] as const) {
    const archive = await openArchive({ path: file, program: 'bench' })
    const made = { file: { fileName: 'blocks.csv', fileSha256: 'a'.repeat(64), sheet: null }, mapping: {} }
    const signal = new AbortController().signal
    for (let from = 0; from < blocks; from += shown)
      await archive.storeImport(() => {}, signal, {
        ...{ ...made, blocks: rowsFrom(from), recordedAt: instant, by: 'bench', demo: true },
      })
    const filter = overviewFilter.parse({})
    const value = await medianMs(7, () => archive.overview(filter))
    const target = { text: `under ${mostMs.question}`, met: value < mostMs.question }
    const what = `every block of ${blocks.toLocaleString('en-GB')}, asked and answered`
    measurements.push({ what, value, unit: 'ms', baseline: null, target })
    if (file === path) measurements.push(await drawing(overviewGroups(await archive.overview(filter))))
    await archive.close()
  }
  return measurements
}

async function drawing(groups: ReturnType<typeof overviewGroups>): Promise<Measurement> {
  const size = { widthPx: 1232, emPx: 12.5 }
  const value = await medianMs(9, () => svgText(overviewFigure(groups, quantitiesIn('SI'), size)))
  const what = `${shown.toLocaleString('en-GB')} blocks as SVG text, outside the browser`
  return { what, value, unit: 'ms', baseline: null, target: { text: `under ${mostMs.task}`, met: value < mostMs.task } }
}

/** Groups of twelve results of 60 adhesives in two exposures at seven ages, drawn up by chance from one seed. */
function rowsFrom(first: number) {
  const random = createRandom(first + 1)
  return Array.from({ length: shown }, (_, i) => {
    const at = first + i
    const group = Math.floor(i / perGroup)
    return {
      ...{ outcome: 'read' as const, row: at + 2, column: null, remarks: [] },
      values: {
        ...{
          number: `B-${at + 1}`,
          adhesive: `adhesive ${1 + (group % 60)}`,
          lot: '',
          wood: 'beech',
          jointType: 'lap',
        },
        ...{ exposure: Math.floor(group / 60) % 2 === 0 ? 'loft' : 'bilge', board: '', place: '', bondLineGapMm: 0 },
        ...{ overlapLengthMm: null, overlapWidthMm: null, areaMm2: 600, peakN: 600 * (9 + 1.2 * random.normal()) },
        ...{ strengthMPa: null, woodFailurePercent: 5 * Math.floor(random.between(0, 21)), failurePattern: null },
        ...{ gluedOn: null, brokenOn: null, ageMonths: 6 * Math.floor(group / 120), note: '' },
      },
    }
  })
}

async function onThePage(archivePath: string): Promise<Measurement[]> {
  const host = startLiveHost()
  const browser = await openBrowser({ width: 1280, height: 800 })
  try {
    const { url } = await host.ask({ ask: 'serve', archivePath, capacityN: 20_000, nPerCount: 0.01 })
    const page = browser.context.pages()[0] ?? (await browser.context.newPage())
    await page.goto(url)
    await page.waitForSelector('.frame')
    const startedAt = performance.now()
    const loading = await watchFrames(page, async () => {
      await page.evaluate(() => {
        location.hash = '#/overview'
      })
      await page.waitForSelector('.groups-figure svg path')
    })
    const firstMs = performance.now() - startedAt
    const used = await watchFrames(page, () => scrollPointAndStep(page))
    await host.ask({ ask: 'close' })
    const named = `${shown.toLocaleString('en-GB')} blocks on the page`
    const plain = { unit: 'ms', baseline: null, target: null }
    return [
      { ...plain, what: `${named}: first picture after`, value: firstMs },
      { ...plain, what: `${named}: most processor time of one task meanwhile`, value: loading.workMs },
      ...frameMeasurements(named, used),
    ]
  } finally {
    await browser.close()
    await host.stop()
  }
}

/** Some seconds of wheel, pointer and arrow keys over the figure. */
async function scrollPointAndStep(page: Page): Promise<void> {
  await page.mouse.move(600, 600)
  for (const turn of [80, -80])
    for (let i = 0; i < 60; i++) {
      await page.mouse.wheel(0, turn)
      await page.waitForTimeout(16)
    }
  for (let i = 0; i < 150; i++) {
    await page.mouse.move(300 + 5 * i, 600 + 120 * Math.sin(i / 9))
    await page.waitForTimeout(16)
  }
  await page.locator('[data-place]').first().focus()
  for (let i = 0; i < 60; i++) await page.keyboard.press(i % 3 === 0 ? 'ArrowRight' : 'ArrowDown')
}
