import { join } from 'node:path'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { systemClock } from '#acquisition/clock.ts'
import type { SourceChoice } from '#contract/bench/source.ts'
import { listRealPorts, openOwnArchive, openRealSource } from '#engine/core/realParts.ts'
import { createEngine } from '#engine/createEngine.ts'
import { startLoopback } from '#shells/loopback/server.ts'
import { projectFolder } from '#shells/start/build.ts'
import { countedLines } from '#tests/fakes/countedLines.ts'

/** What the benchmark asks of this process, and what it answers. */
export type HostRequest =
  | { ask: 'serve'; archivePath: string; capacityN: number; nPerCount: number }
  | { ask: 'connect'; source: SourceChoice }
  | { ask: 'measure' }
  | { ask: 'report' }
  | { ask: 'close' }
export type HostReport = {
  url: string
  linesReceived: number
  missingSamples: number
  rejectedLines: number
  breaks: number
  delayP99Ms: number
  delayMaxMs: number
}

/**
 * The browser host in a process of its own, made of the program's own parts, with two gauges: the delay of its event loop
 * and the lines that its serial port delivered.
 */
const delay = monitorEventLoopDelay({ resolution: 1 })
const received = { lines: 0 }
let host: Awaited<ReturnType<typeof serve>> | null = null

async function serve({ archivePath, capacityN, nPerCount }: Extract<HostRequest, { ask: 'serve' }>) {
  const archive = await openOwnArchive(archivePath, 'bench')
  await archive.setPreferences({ cautionsRead: true, capacityN, nPerCount })
  const engine = await createEngine({
    archive,
    clock: systemClock,
    openSource: (choice, clock) => countedLines(openRealSource(choice, clock), received),
    listPorts: listRealPorts,
    listen: () => Promise.reject(new TypeError('the benchmark listens to no port')),
    host: { host: 'loopback', capabilities: [] },
    program: 'bench',
  })
  const loopback = await startLoopback({ engine, pageFolder: join(projectFolder, 'dist/renderer'), port: 0 })
  return { archive, engine, loopback }
}

async function answer(request: HostRequest): Promise<HostReport> {
  if (request.ask === 'serve') host = await serve(request)
  if (host === null) throw new TypeError('the host must serve first')
  const { engine, archive, loopback } = host
  if (request.ask === 'connect') await engine.handlers['bench.connect']({ source: request.source })
  if (request.ask === 'measure') delay.reset()
  const report: HostReport = {
    url: loopback.url,
    linesReceived: received.lines,
    ...(await signalOf(engine)),
    breaks: (await archive.info()).breaks,
    delayP99Ms: delay.percentile(99) / 1e6,
    delayMaxMs: delay.max / 1e6,
  }
  if (request.ask === 'close') {
    await loopback.close()
    await engine.close()
    await archive.close()
  }
  return report
}

async function signalOf({ handlers }: Awaited<ReturnType<typeof createEngine>>) {
  const { missingSamples, rejectedLines } = (await handlers['bench.state']({})).signal
  return { missingSamples, rejectedLines }
}

process.on('message', (request: HostRequest) => {
  answer(request).then(
    (report) => process.send?.({ report }),
    (thrown: unknown) => process.send?.({ failed: thrown instanceof Error ? thrown.stack : String(thrown) }),
  )
})
delay.enable()
