import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it, vi } from 'vitest'
import { createSerialSource } from '#acquisition/serial/serialSource.ts'
import { openPseudoTerminal } from '#acquisition/virtual/port/pseudoTerminal.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'
import { eventually, writeAll } from '#tests/fakes/ports/ptyPlug.ts'

const deaf = { bytes: () => {}, lost: () => {}, restored: () => {}, ended: () => {} }

describe.runIf(process.platform !== 'win32')('pseudo-terminal', () => {
  it('offers nothing but its path, a look for a reader, writing and closing', async () => {
    const terminal = await openPseudoTerminal()
    expect(Object.keys(terminal).sort()).toEqual(['close', 'hasReader', 'path', 'write'])
    expect(Object.getPrototypeOf(terminal)).toBe(Object.prototype)
    expect(Object.isFrozen(terminal)).toBe(true)
    expect(JSON.stringify(terminal)).toBe(JSON.stringify({ path: terminal.path }))
    terminal.close()
  })

  it('signals no process, however it is closed', async () => {
    const kill = vi.spyOn(process, 'kill').mockImplementation(() => true)
    const terminal = await openPseudoTerminal()
    terminal.close()
    terminal.close()
    // The system takes the port away once both its ends are closed.
    await eventually(() => !existsSync(terminal.path))
    expect(kill).not.toHaveBeenCalled()
  })

  it('is the only module that names the package, and calls neither kill nor destroy on the whole', () => {
    const source = readFileSync(
      new URL('../../../../electron/acquisition/virtual/port/pseudoTerminal.ts', import.meta.url),
      'utf8',
    )
    const calls = source.match(/[\w.]+\.(?:kill|destroy)\(/g)
    expect(calls).toEqual(['pair._slave.destroy(', 'pair._master.destroy('])
    expect(source).not.toMatch(/export .*Pair|return pair\b(?!\.)/)
  })

  it('sees whether a program has the port open, and takes no bytes while none has', async () => {
    const terminal = await openPseudoTerminal()
    expect(terminal.hasReader()).toBe(false)
    expect(terminal.write(Uint8Array.of(65))).toBe(0)
    const source = createSerialSource(terminal.path, 115_200, movedClock())
    await source.open(deaf)
    expect(terminal.hasReader()).toBe(true)
    await source.close()
    await eventually(() => !terminal.hasReader())
    terminal.close()
    expect(terminal.hasReader()).toBe(false)
    expect(terminal.write(Uint8Array.of(65))).toBe(0)
  })

  it('hands every byte value over unchanged, more of them than its buffer holds', async () => {
    const terminal = await openPseudoTerminal()
    const source = createSerialSource(terminal.path, 115_200, movedClock())
    const heard: Uint8Array[] = []
    await source.open({ ...deaf, bytes: (chunk) => heard.push(chunk.slice()) })
    const sent = Uint8Array.from({ length: 300_000 }, (_, i) => (i * 7 + (i >> 8)) % 256)
    await writeAll(terminal, sent)
    await eventually(() => heard.reduce((sum, chunk) => sum + chunk.length, 0) === sent.length)
    expect(Buffer.concat(heard).equals(sent)).toBe(true)
    await source.close()
    terminal.close()
  })
})
