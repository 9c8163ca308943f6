import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { systemClock } from '#acquisition/clock.ts'
import { createSerialSource } from '#acquisition/serial/serialSource.ts'
import { commands } from '#shells/commands/commands.ts'
import { archiveFileOf } from '#tests/archive/pulledStudy.ts'
import { startCommand } from '#tests/fakes/commandProcess.ts'
import { runWords } from '#tests/fakes/commandRun.ts'

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
      const finished = await emulator.until(({ event }) => event === 'finished')
      await reader.close()
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
