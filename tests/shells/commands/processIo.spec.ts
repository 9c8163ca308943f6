import { EventEmitter } from 'node:events'
import { Writable } from 'node:stream'
import { describe, expect, it } from 'vitest'
import type { Command } from '#shells/commands/command.ts'
import { type ProcessParts, processIo } from '#shells/commands/processIo.ts'
import { runCommandLine } from '#shells/commands/runCommandLine.ts'

/** A process whose output goes to a stream that may refuse it, and the signals that it catches. */
function processWith(stdout: Writable) {
  const signals = new EventEmitter()
  let said = ''
  const stderr = new Writable({
    write(text, _encoding, done) {
      said += text
      done()
    },
  })
  const ended: unknown[] = []
  const exit = (code: unknown) => void ended.push(code)
  const on = signals.on.bind(signals)
  const io = processIo({ stdout, stderr, on, exit } as unknown as ProcessParts)
  return { io, signals, ended, said: () => said }
}

const refusing = (code: string) =>
  new Writable({ write: (_text, _encoding, done) => done(Object.assign(new Error(`${code}: refused`), { code })) })
const taking = () => new Writable({ write: (_text, _encoding, done) => done() })

/** Says a line after the other, as long as somebody takes them. */
const counting: Command = {
  ...{ name: 'count', operands: '', summary: '', options: {}, usesArchive: false, details: [] },
  async run({ io }) {
    for (let line = 1; await io.out(`${line}\n`); line++) if (line === 3) break
    return 0
  },
}

describe('the output of a command', () => {
  it.each([
    ['ENOSPC', 'the disk has no room for it'],
    ['EDQUOT', 'the disk has no room for it'],
    ['EFBIG', 'EFBIG: refused'],
  ])('fails with a sentence where it cannot be written because of %s', async (code, because) => {
    const { io, said } = processWith(refusing(code))
    expect(await runCommandLine([counting], ['count'], io)).toBe(1)
    expect(said()).toContain(`Not all of the output could be written: ${because}.\n`)
  })

  it.each(['EPIPE', 'EIO'])('may be read no further: %s is no fault', async (code) => {
    const { io, said } = processWith(refusing(code))
    expect([await runCommandLine([counting], ['count'], io), said()]).toEqual([0, ''])
  })

  it('asks a command to finish that goes on when nobody takes what it says any more', async () => {
    const { io } = processWith(refusing('ENOSPC'))
    void io.out('a')
    await new Promise((resolve) => io.interrupt.addEventListener('abort', resolve))
    expect(await io.out('b')).toBe(false)
  })
})

describe('a request to end', () => {
  const caught = ['SIGINT', 'SIGTERM', 'SIGHUP']

  it('is left to the system while a command runs that never asks for it', async () => {
    const { io, signals } = processWith(taking())
    expect(await runCommandLine([counting], ['count'], io)).toBe(0)
    expect(caught.map((signal) => signals.listenerCount(signal))).toEqual([0, 0, 0])
  })

  it.each(caught)('by %s asks a command that heeds it to finish, and ends it at once the second time', (signal) => {
    const { io, signals, ended } = processWith(taking())
    expect([io.interrupt.aborted, io.interrupt.aborted]).toEqual([false, false])
    expect(signals.listenerCount(signal)).toBe(1)
    signals.emit(signal)
    expect([io.interrupt.aborted, ended]).toEqual([true, []])
    signals.emit(signal)
    expect(ended).toEqual([1])
  })
})
