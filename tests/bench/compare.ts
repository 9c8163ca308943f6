import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { openArchive } from '#archive/openArchive.ts'
import { buildLevels } from '#renderer/plots/minMaxLevels.ts'
import { buildIfNeeded } from '#shells/start/build.ts'
import { chromiumPath, openBrowser } from '#tests/browser/harness/chromium.ts'
import { startLiveHost } from './childProcesses.ts'
import { storeGroup } from './comparedBreaks.ts'
import { frameMeasurements, watchFrames } from './frameWatch.ts'
import { type Benchmark, type Measurement, medianMs } from './measurement.ts'

const breaks = 50
const samplesEach = 100_000
const longCurve = 1_000_000
const sizes = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
]

/**
 * The compare page with fifty long curves, as a person would use it: an archive of breaks of the virtual bench, the browser
 * host in a process of its own, the built page in Chromium, and real wheel, pointer and key events.
 */
export const compareBenchmark: Benchmark = async () => {
  if (chromiumPath === null) return { because: 'there is no Chromium on this machine; name one with CHROMIUM_PATH' }
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-bench-'))
  try {
    await buildIfNeeded('page')
    const archivePath = join(folder, 'compare.breakledger')
    const archive = await openArchive({ path: archivePath, program: 'bench' })
    const group = await storeGroup(archive, breaks, samplesEach)
    const [long] = await storeGroup(archive, 1, longCurve)
    await archive.close()
    const measurements: Measurement[] = []
    for (const size of sizes)
      measurements.push(...(await measureAt(size, archivePath, group, size === sizes[0] ? (long ?? null) : null)))
    return [...measurements, await buildingOf(samplesEach), await buildingOf(longCurve)]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

async function measureAt(
  { width, height }: { width: number; height: number },
  archivePath: string,
  group: readonly number[],
  long: number | null,
): Promise<Measurement[]> {
  const host = startLiveHost()
  const browser = await openBrowser({ width, height })
  try {
    const { url } = await host.ask({ ask: 'serve', archivePath, capacityN: 20_000, nPerCount: 0.01 })
    const page = browser.context.pages()[0] ?? (await browser.context.newPage())
    await page.goto(url)
    await page.waitForSelector('.frame')
    const still = await watchFrames(page, () => pointAround(page))
    const named = `${breaks} curves of 100,000 at ${width} x ${height}`
    const measurements = frameMeasurements(`nothing drawn, at ${width} x ${height}`, still).map(asBackground)
    measurements.push(...(await loadAndUse(page, `#/compare/${group.join(',')}`, named, '.compare-table')))
    if (long !== null) {
      measurements.push(
        ...(await loadAndUse(page, `#/compare/${long}`, 'one curve of 1,000,000, overlay', '.compare-table')),
      )
      measurements.push(
        ...(await loadAndUse(page, `#/breaks/${long}`, 'one curve of 1,000,000, record', '.plot canvas')),
      )
    }
    await host.ask({ ask: 'close' })
    return measurements
  } finally {
    await browser.close()
    await host.stop()
  }
}

async function loadAndUse(page: Page, hash: string, named: string, ready: string): Promise<Measurement[]> {
  const startedAt = performance.now()
  const loading = await watchFrames(page, async () => {
    await page.evaluate((to) => {
      location.hash = to
    }, hash)
    await page.waitForSelector(ready)
    await page.waitForFunction(() => document.querySelector('.compare-tasks') === null, null, { timeout: 120_000 })
  })
  const loadedMs = performance.now() - startedAt
  const plain = { unit: 'ms', baseline: null, target: null }
  await page.waitForTimeout(1000)
  const used = await watchFrames(page, () => zoomAndPan(page))
  return [
    { ...plain, what: `${named}: all drawn after`, value: loadedMs },
    { ...plain, what: `${named}: longest frame meanwhile`, value: Math.max(...loading.framesMs) },
    { ...plain, what: `${named}: most processor time of one task meanwhile`, value: loading.workMs },
    ...frameMeasurements(named, used),
  ]
}

/** What the machine does to a page that draws nothing is no target: other programs may be running. */
function asBackground(measurement: Measurement): Measurement {
  return { ...measurement, target: null }
}

/** Five seconds of moving the pointer over a page that stands still. */
async function pointAround(page: Page): Promise<void> {
  for (let i = 0; i < 300; i++) {
    await page.mouse.move(400 + 200 * Math.sin(i / 9), 500)
    await page.waitForTimeout(16)
  }
}

/** About twelve seconds of wheel, drag, pointing and keys. */
async function zoomAndPan(page: Page): Promise<void> {
  const box = await page.locator('.u-over').boundingBox()
  if (box === null) throw new RangeError('there is no plot to zoom')
  const x = (share: number) => box.x + box.width * share
  const middleY = box.y + box.height / 2
  await page.mouse.move(x(0.6), middleY)
  for (const turn of [-60, 60, -60])
    for (let i = 0; i < 45; i++) {
      await page.mouse.wheel(0, turn)
      await page.waitForTimeout(16)
    }
  await page.keyboard.down('Shift')
  for (const direction of [-1, 1, -1]) {
    await page.mouse.move(x(0.5 - 0.4 * direction), middleY)
    await page.mouse.down()
    for (let i = 0; i <= 60; i++) {
      await page.mouse.move(x(0.5 + direction * (0.8 * (i / 60) - 0.4)), middleY)
      await page.waitForTimeout(16)
    }
    await page.mouse.up()
  }
  await page.keyboard.up('Shift')
  for (let i = 0; i <= 90; i++) {
    await page.mouse.move(x(0.1 + (0.8 * i) / 90), box.y + box.height * (0.5 + 0.4 * Math.sin(i / 7)))
    await page.waitForTimeout(16)
  }
  await page.getByRole('application').focus()
  for (const key of ['0', '+', '+', 'PageDown', 'PageDown', '+', 'ArrowDown', 'ArrowRight', 'PageUp', '-', '0']) {
    await page.keyboard.press(key)
    await page.waitForTimeout(120)
  }
}

async function buildingOf(samples: number): Promise<Measurement> {
  const timeS = Float64Array.from({ length: samples }, (_, i) => i / 5000)
  const force = Float64Array.from({ length: samples }, (_, i) => ((i * 7919) % 1009) + i / 100)
  const value = await medianMs(9, () => buildLevels(timeS, force))
  const what = `levels of ${samples.toLocaleString('en-GB')} samples, outside the browser`
  return { what, value, unit: 'ms', baseline: null, target: null }
}
