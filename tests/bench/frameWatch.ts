import type { Page } from 'playwright-core'
import type { Measurement } from './measurement.ts'

/** Times between frames and long tasks of the page's main thread, ms. */
export type Frames = { framesMs: number[]; longTasksMs: number[] }

/** Counts every frame of the page while something is done to it. */
export async function watchFrames(page: Page, doing: () => Promise<void>): Promise<Frames> {
  await page.evaluate(() => {
    const seen = { framesMs: [] as number[], longTasksMs: [] as number[], over: false }
    Object.assign(globalThis, { framesSeen: seen })
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) seen.longTasksMs.push(duration)
    }).observe({ entryTypes: ['longtask'] })
    let before = performance.now()
    const next = (): void => {
      const now = performance.now()
      seen.framesMs.push(now - before)
      before = now
      if (!seen.over) requestAnimationFrame(next)
    }
    requestAnimationFrame(next)
  })
  await doing()
  return page.evaluate(async () => {
    const { framesSeen } = globalThis as unknown as { framesSeen: Frames & { over: boolean } }
    await new Promise((resolve) => setTimeout(resolve, 100))
    framesSeen.over = true
    // The first is counted from when the watch began, not from a frame.
    return { framesMs: framesSeen.framesMs.slice(1), longTasksMs: framesSeen.longTasksMs }
  })
}

const latestMs = 50

/** What was seen, as lines of the table. */
export function frameMeasurements(what: string, { framesMs, longTasksMs }: Frames): Measurement[] {
  const sorted = framesMs.toSorted((a, b) => a - b)
  const at = (share: number) => sorted[Math.min(Math.floor(share * sorted.length), sorted.length - 1)] ?? Number.NaN
  const longest = sorted.at(-1) ?? Number.NaN
  const late = framesMs.filter((ms) => ms > latestMs).length
  const plain = { unit: 'ms', baseline: null, target: null }
  return [
    {
      ...plain,
      what: `${what}: longest frame`,
      value: longest,
      target: { text: 'no frame over 50', met: longest <= latestMs },
    },
    { ...plain, what: `${what}: 99 of 100 frames within`, value: at(0.99) },
    { ...plain, what: `${what}: median frame`, value: at(0.5) },
    {
      ...plain,
      what: `${what}: frames over 50 ms`,
      value: (100 * late) / framesMs.length,
      unit: `% of ${framesMs.length}`,
    },
    { ...plain, what: `${what}: longest task of the main thread`, value: Math.max(0, ...longTasksMs) },
  ]
}
