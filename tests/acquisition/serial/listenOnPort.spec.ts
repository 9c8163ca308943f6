import { describe, expect, it } from 'vitest'
import { createRecordedSource } from '#acquisition/recordedSource.ts'
import { listenOnPort, listenTo } from '#acquisition/serial/listenOnPort.ts'
import { createVirtualSource } from '#acquisition/virtual/virtualSource.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'
import { eventually, ptyPlug } from '#tests/fakes/ports/ptyPlug.ts'

describe('listening to a device', () => {
  it('takes the seconds asked for and proposes what it heard', async () => {
    const clock = movedClock()
    const listening = listenTo(createVirtualSource({ scenario: 'idle', rateHz: 80, seed: 1 }, clock), 115_200, 2, clock)
    await clock.move(2)
    const { proposal, linesPerSecond } = await listening
    expect(proposal).toEqual({ name: 'checked', columns: [] })
    expect(Math.abs(linesPerSecond! - 80)).toBeLessThan(4)
  })

  it('ends early when it has heard enough, and still knows the rate', async () => {
    const clock = movedClock()
    const line = new TextEncoder().encode('1234567\n')
    const recording = new Uint8Array(2_000_000)
    for (let at = 0; at < recording.length; at += line.length) recording.set(line, at)
    const source = createRecordedSource({ recording, bytesPerSecond: 800_000, paced: true }, clock)
    const listening = listenTo(source, null, 30, clock)
    await clock.move(5)
    const { bytes, linesPerSecond } = await listening
    expect(bytes).toBeLessThan(1_060_000)
    expect(Math.abs(linesPerSecond! - 100_000)).toBeLessThan(1000)
  })

  it('passes on why the device cannot be had, or that it went away', async () => {
    const clock = movedClock()
    await expect(listenOnPort('/dev/no-such-port', 115_200, 1, clock)).rejects.toMatchObject({ code: 'port-missing' })
    const pulled = createVirtualSource(
      { scenario: 'idle', rateHz: 80, seed: 1, unplugs: [{ atS: 0.5, forS: 5 }] },
      clock,
    )
    const listening = listenTo(pulled, null, 2, clock)
    await Promise.all([expect(listening).rejects.toMatchObject({ code: 'port-lost' }), clock.move(1)])
  })

  it.runIf(process.platform !== 'win32')('listens on a real port and lets go of it', async () => {
    const plug = ptyPlug()
    try {
      const device = await plug.plugIn()
      const clock = movedClock()
      const listening = listenOnPort(plug.path, 115_200, 1, clock)
      let over = false
      void listening.finally(() => {
        over = true
      })
      await eventually(() => device.hasReader())
      // Its second goes on with the lines, so that some are heard on however slow a machine.
      await eventually(async () => {
        if (!over) device.write(new TextEncoder().encode('+1.5 N\r\n'.repeat(3)))
        await clock.move(0.02)
        return over
      })
      expect(await listening).toMatchObject({ proposal: { name: 'number' }, fit: 1 })
      expect(device.hasReader()).toBe(false)
    } finally {
      plug.remove()
    }
  })
})
