import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { systemClock } from '#acquisition/clock.ts'
import { createSerialSource } from '#acquisition/serial/serialSource.ts'
import { createBenchModel } from '#acquisition/virtual/benchModel.ts'
import { commands } from '#shells/commands/commands.ts'
import { archiveFileOf } from '#tests/archive/pulledStudy.ts'
import { startCommand } from '#tests/fakes/commandProcess.ts'
import { runWords } from '#tests/fakes/commandRun.ts'
import { eventually } from '#tests/fakes/ports/ptyPlug.ts'

/** How many samples the model of a bench gives from beginning to end. */
function samplesOf(options: Parameters<typeof createBenchModel>[0]): number {
  const model = createBenchModel(options)
  const some = { timeUs: new Float64Array(8192), counts: new Float64Array(8192), sequence: new Float64Array(8192) }
  let total = 0
  for (let made = model.fill(some); made > 0; made = model.fill(some)) total += made
  return total
}

describe.runIf(process.platform !== 'win32')('emulate', () => {
  it('prints its path first, then what happened in each loading, then what was sent', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'breakledger-emulate-'))
    const sentFile = join(folder, 'sent.csv')
    const words = ['--scenario', 'gaps', '--breaks', '1', '--seed', '130', '--speed', '100', '--sent', sentFile]
    const emulator = startCommand(['emulate', ...words])
    let received = ''
    let reader: ReturnType<typeof createSerialSource> | null = null
    try {
      const first = await emulator.until(() => true)
      expect(first).toMatchObject({ lineFormat: 'checked', rateHz: 80, nPerCount: 0.01 })
      reader = createSerialSource(String(first.path), 115200, systemClock)
      await reader.open({
        bytes: (chunk) => {
          received += new TextDecoder('latin1').decode(chunk)
        },
        lost() {},
        restored() {},
        ended() {},
      })
      // The amplifier ends when its reader, which has all of it, leaves
      const total = samplesOf({ scenario: 'gaps', rateHz: 80, seed: 130, breaks: 1 })
      await eventually(() => received.split('\n').length > total)
      await reader.close()
      const finished = await emulator.until(({ event }) => event === 'finished')
      expect(await emulator.ended).toBe(0)
      expect(finished).toMatchObject({ loadings: 1, linesDamaged: 0 })
      expect(Number(finished.samplesDropped)).toBeGreaterThan(0)
      const lines = received.split('\n').filter((line) => line.startsWith('$BL'))
      expect(lines.length).toBe(finished.samplesSent)
      const sent = (await readFile(sentFile, 'utf8')).trim().split('\n')
      expect(sent[0]).toBe('seq,time_us,counts')
      expect(lines.map((line) => line.slice(4, line.indexOf('*')))).toEqual(sent.slice(1))
      expect(emulator.lines[1]).toMatchObject({ number: 1, kind: 'gaps', outcome: 'break' })
    } finally {
      await reader?.close()
      emulator.child.kill('SIGKILL')
      await rm(folder, { recursive: true, force: true })
    }
  })

  it('writes what was sent over no archive', async () => {
    const archive = archiveFileOf(() => {})
    const { code, err } = await runWords(commands, ['emulate', '--sent', archive])
    expect([code, err]).toEqual([
      1,
      `${archive} is an archive, or another database, and is not written over.\nName another file.\n`,
    ])
  })

  it('ends on Ctrl-C while it waits for a reader', async () => {
    const emulator = startCommand(['emulate'])
    await emulator.until((line) => 'path' in line)
    emulator.child.kill('SIGINT')
    expect(await emulator.ended).toBe(0)
    expect(emulator.lines.at(-1)).toMatchObject({ event: 'finished', loadings: 0, samplesSent: 0 })
  })
})
