import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import type { Page } from 'playwright-core'
import type { LineFormatChoice } from '#contract/bench/source.ts'
import { buildIfNeeded } from '#shells/start/build.ts'
import { chromiumPath, openBrowser } from '#tests/browser/harness/chromium.ts'
import { type Emulator, startEmulator, startLiveHost } from './childProcesses.ts'
import type { HostReport } from './liveHost.ts'
import type { Benchmark, Measurement } from './measurement.ts'

const rateHz = 10_000
const settleS = 3
const measuredS = 15

type PageLoad = { frames: number; busyS: number; elapsedS: number; slowFrames: number }

/** Three programs at once: the virtual amplifier, the browser host, and Chromium with the bench screen open. */
export const liveBenchmark: Benchmark = async () => {
  if (chromiumPath === null) return { because: 'there is no Chromium on this machine; name one with CHROMIUM_PATH' }
  const words = ['--rate', String(rateHz), '--scenario', 'brittle', '--breaks', '2', '--line-format', 'checked']
  let emulator: Emulator
  try {
    emulator = await startEmulator(words)
  } catch (thrown) {
    return { because: thrown instanceof Error ? thrown.message : String(thrown) }
  }
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-bench-'))
  try {
    await buildIfNeeded('page')
    return await measureLive(emulator, join(folder, 'live.breakledger'))
  } finally {
    await emulator.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}

async function measureLive(emulator: Emulator, archivePath: string): Promise<Measurement[]> {
  const { path, nPerCount, capacityN } = emulator.facts
  const host = startLiveHost()
  const browser = await openBrowser({ width: 1280, height: 800 })
  try {
    const { url } = await host.ask({ ask: 'serve', archivePath, capacityN, nPerCount })
    const page = browser.context.pages()[0] ?? (await browser.context.newPage())
    await page.goto(url)
    const lineFormat: LineFormatChoice = { name: 'checked', columns: [] }
    await host.ask({ ask: 'connect', source: { kind: 'serial', path, baudRate: 115200, lineFormat } })
    // A program that was never connected opens on the amplifier
    await page.evaluate(() => {
      location.hash = '#/bench'
    })
    await page.waitForSelector('.live-curve canvas')
    await sleep(settleS * 1000)

    const before = await host.ask({ ask: 'measure' })
    const load = await watchPage(page, measuredS)
    const after = await host.ask({ ask: 'report' })
    const { samplesSent } = await emulator.finished
    const end = await host.ask({ ask: 'close' })
    return measurements({ before, after, end, load, samplesSent })
  } finally {
    await browser.close()
    await host.stop()
  }
}

/** Frames drawn and seconds of work on the page's main thread, as Chromium itself counts them. */
async function watchPage(page: Page, seconds: number): Promise<PageLoad> {
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  const taskS = async () => {
    const { metrics } = await session.send('Performance.getMetrics')
    const value = (name: string) => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN
    return { busyS: value('TaskDuration'), atS: value('Timestamp') }
  }
  const before = await taskS()
  const { frames, slowFrames } = await page.evaluate(
    (ms) =>
      new Promise<{ frames: number; slowFrames: number }>((resolve) => {
        let frames = 0
        let slowFrames = 0
        const startedAt = performance.now()
        let previous = startedAt
        const next = () => {
          const now = performance.now()
          frames += 1
          if (now - previous > 50) slowFrames += 1
          previous = now
          if (now - startedAt < ms) requestAnimationFrame(next)
          else resolve({ frames, slowFrames })
        }
        requestAnimationFrame(next)
      }),
    seconds * 1000,
  )
  const after = await taskS()
  await session.detach()
  return { frames, slowFrames, busyS: after.busyS - before.busyS, elapsedS: after.atS - before.atS }
}

function measurements(seen: {
  before: HostReport
  after: HostReport
  end: HostReport
  load: PageLoad
  samplesSent: number
}): Measurement[] {
  const { before, after, end, load, samplesSent } = seen
  const lost = samplesSent - end.linesReceived + end.missingSamples + end.rejectedLines
  const receivedHz = (after.linesReceived - before.linesReceived) / load.elapsedS
  const frameMs = (load.busyS / load.frames) * 1000
  const plain = (what: string, value: number, unit: string): Measurement => ({
    what,
    value,
    unit,
    baseline: null,
    target: null,
  })
  return [
    plain('samples sent by the amplifier', samplesSent, 'samples'),
    plain('breaks stored', end.breaks, 'breaks'),
    { ...plain('samples lost', lost, 'samples'), target: { text: 'none', met: lost === 0 } },
    {
      ...plain('samples received with the page open', receivedHz, 'samples/s'),
      target: { text: 'within 1 % of 10,000', met: Math.abs(receivedHz / rateHz - 1) < 0.01 },
    },
    {
      ...plain("delay of the host's event loop, p99", after.delayP99Ms, 'ms'),
      target: { text: 'under 20', met: after.delayP99Ms < 20 },
    },
    plain("delay of the host's event loop, longest", after.delayMaxMs, 'ms'),
    {
      ...plain("work of the page's main thread per frame", frameMs, 'ms'),
      target: { text: 'under 6', met: frameMs < 6 },
    },
    plain('frames drawn', load.frames / load.elapsedS, 'frames/s'),
    plain('frames later than 50 ms', load.slowFrames, 'frames'),
  ]
}
