import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { LoadingTruth } from '#acquisition/virtual/loading/loadingTruth.ts'
import { openArchive } from '#archive/openArchive.ts'
import type { BreakRecord } from '#contract/breaks/break.ts'
import type { RawCurve } from '#contract/breaks/curve.ts'
import { noFilter } from '#contract/listQuery.ts'
import { startCommand } from '../commandProcess.ts'

export type PortCapture = {
  emulate: readonly string[]
  capture: readonly string[]
  breaks: number
}

export type PortCaptureOutcome = {
  captureExit: number | string
  emulateExit: number | string
  events: Record<string, unknown>[]
  truths: LoadingTruth[]
  /** Counts in the order in which they were sent. */
  sent: Float64Array
  records: BreakRecord[]
  curves: RawCurve[]
  errors: string
}

/** Runs `emulate` and `capture` as two programs joined by a pseudo-terminal only, and gathers what both say. */
export async function runPortCapture({ emulate, capture, breaks }: PortCapture): Promise<PortCaptureOutcome> {
  const folder = await mkdtemp(join(tmpdir(), 'breakledger-port-'))
  const archivePath = join(folder, 'capture.breakledger')
  const sentFile = join(folder, 'sent.csv')
  const emulator = startCommand(['emulate', '--breaks', String(breaks), '--sent', sentFile, ...emulate])
  try {
    const { path, nPerCount } = await emulator.until((line) => 'path' in line)
    const recorder = startCommand([
      ...['capture', '--port', String(path), '--archive', archivePath, '--scale', String(nPerCount)],
      ...['--capacity', '25000', ...capture],
    ])
    try {
      const captureExit = await recorder.ended
      // The amplifier ends by itself soon after its reader left; if it does not, its exit code will tell.
      const patience = setTimeout(() => emulator.child.kill('SIGKILL'), 200_000)
      const emulateExit = await emulator.ended
      clearTimeout(patience)
      const text = await readFile(sentFile, 'utf8').catch(() => '')
      const sent = Float64Array.from(text.trim().split('\n').slice(1), (line) => Number(line.split(',')[2]))
      const archive = await openArchive({ path: archivePath, program: 'test', mode: 'read' })
      try {
        const { total } = await archive.listBreaks(everything)
        const ids = Array.from({ length: total }, (_, index) => index + 1)
        return {
          captureExit,
          emulateExit,
          events: recorder.lines,
          truths: emulator.lines.filter((line) => 'kind' in line) as unknown as LoadingTruth[],
          sent,
          records: await Promise.all(ids.map((id) => archive.break(id))),
          curves: await Promise.all(ids.map((id) => archive.readCurve(id))),
          errors: recorder.errors() + emulator.errors(),
        }
      } finally {
        await archive.close()
      }
    } finally {
      recorder.child.kill('SIGKILL')
    }
  } finally {
    emulator.child.kill('SIGKILL')
    await rm(folder, { recursive: true, force: true })
  }
}

const everything = {
  text: '',
  status: 'all',
  filter: noFilter,
  sort: 'startedAt',
  descending: false,
  offset: 0,
  limit: 1000,
} as const

/** Where a stored curve lies in what was sent, sample for sample; null when it is not in there without a gap. */
export function placeInStream(readings: Float64Array, sent: Float64Array): number | null {
  for (let place = 0; place + readings.length <= sent.length; place++) {
    let i = 0
    while (i < readings.length && sent[place + i] === readings[i]) i += 1
    if (i === readings.length) return place
  }
  return null
}
