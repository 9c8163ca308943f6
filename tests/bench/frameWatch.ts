import type { Page } from 'playwright-core'
import type { Measurement } from './measurement.ts'

/**
 * Times between frames and long tasks of the page's main thread, ms. `workMs`: processor time of its longest task, which
 * other programs on the machine do not lengthen.
 */
export type Frames = { framesMs: number[]; longTasksMs: number[]; workMs: number }

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
  const work = await longestWork(page, doing)
  const seen = await page.evaluate(async () => {
    const { framesSeen } = globalThis as unknown as {
      framesSeen: Pick<Frames, 'framesMs' | 'longTasksMs'> & { over: boolean }
    }
    await new Promise((resolve) => setTimeout(resolve, 100))
    framesSeen.over = true
    // The first is counted from when the watch began, not from a frame.
    return { framesMs: framesSeen.framesMs.slice(1), longTasksMs: framesSeen.longTasksMs }
  })
  return { ...seen, workMs: work }
}

type TraceEvent = { name: string; pid: number; tid: number; ts: number; tdur?: number; args?: { name?: string } }

/** Processor time of the longest task of the page's main thread while something is done, as Chromium traces it, ms. */
async function longestWork(page: Page, doing: () => Promise<void>): Promise<number> {
  const session = await page.context().newCDPSession(page)
  const events: TraceEvent[] = []
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])))
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel'], excludedCategories: ['*'] },
  })
  await doing()
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve))
  await session.send('Tracing.end')
  await complete
  await session.detach()
  const threadOf = ({ pid, tid }: TraceEvent) => `${pid}/${tid}`
  const mainThreads = events
    .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
    .map(threadOf)
  const tasksMs = events
    .filter((event) => event.name.endsWith('RunTask') && mainThreads.includes(threadOf(event)))
    .map(({ tdur }) => (tdur ?? 0) / 1000)
  return tasksMs.reduce((most, ms) => Math.max(most, ms), 0)
}

const latestMs = 50

/** What was seen, as lines of the table. */
export function frameMeasurements(what: string, { framesMs, longTasksMs, workMs }: Frames): Measurement[] {
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
    { ...plain, what: `${what}: most processor time of one task`, value: workMs },
  ]
}
