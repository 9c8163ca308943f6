import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { createSerialSource } from '#acquisition/serial/serialSource.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { type MovedClock, movedClock } from '#tests/fakes/movedClock.ts'
import { eventually, type PtyPlug, ptyPlug, writeAll } from '#tests/fakes/ports/ptyPlug.ts'
import { readLines } from '#tests/fakes/streams/readLines.ts'

const text = (words: string) => new TextEncoder().encode(words)

function listener() {
  const told: string[] = []
  let heard = ''
  return {
    told,
    heard: () => heard,
    bytes: (chunk: Uint8Array) => {
      heard += new TextDecoder().decode(chunk)
    },
    lost: (trouble: { code: string }) => told.push(trouble.code),
    restored: () => told.push('restored'),
    ended: () => told.push('ended'),
  }
}

describe.runIf(process.platform !== 'win32')('serial source on a real port', () => {
  let plug: PtyPlug
  beforeEach(() => {
    plug = ptyPlug()
  })
  afterEach(() => plug.remove())

  it('gives the bytes of the device with the time of their arrival', async () => {
    const device = await plug.plugIn()
    const clock = movedClock()
    const source = createSerialSource(plug.path, 115_200, clock)
    const arrivals: number[] = []
    const ear = listener()
    await clock.move(3)
    await source.open({
      ...ear,
      bytes(chunk, arrivalS) {
        arrivals.push(arrivalS)
        ear.bytes(chunk)
      },
    })
    device.write(text('1\r\n2\n'))
    await eventually(() => ear.heard() === '1\r\n2\n')
    expect(arrivals[0]).toBe(3)
    expect(source.label).toBe(`${plug.path} at 115200 baud`)
    await source.close()
  })

  it('loses no reading however the device cuts its lines', async () => {
    const device = await plug.plugIn()
    const source = createSerialSource(plug.path, 115_200, movedClock())
    const values: number[] = []
    let rejected = 0
    const parser = readLines(
      { name: 'number', columns: [] },
      (value) => values.push(value),
      () => rejected++,
    )
    await source.open({ ...listener(), bytes: (chunk) => parser.push(chunk) })
    const random = createRandom(31)
    const sent = Array.from({ length: 4000 }, () => random.wholeBetween(-8_000_000, 8_000_000))
    const bytes = text(`\n${sent.join('\r\n')}\r\n`)
    for (let at = 0; at < bytes.length; ) {
      const length = random.wholeBetween(1, 200)
      await writeAll(device, bytes.subarray(at, at + length))
      at += length
      if (random.unit() < 0.05) await new Promise((resolve) => setImmediate(resolve))
    }
    await eventually(() => values.length === sent.length)
    expect(values).toEqual(sent)
    expect(rejected).toBe(0)
    await source.close()
  })

  /** Moves the source's clock a little at a time, as the real one would go on, until something holds. */
  async function comesTrue(clock: MovedClock, holds: () => boolean): Promise<void> {
    await eventually(async () => {
      await clock.move(0.1)
      return holds()
    })
  }

  it('tells when the device was pulled, looks for it, and goes on when it is back', async () => {
    await plug.plugIn()
    const clock = movedClock()
    const source = createSerialSource(plug.path, 115_200, clock)
    const ear = listener()
    await source.open(ear)
    plug.pull()
    await comesTrue(clock, () => ear.told.length > 0)
    expect(ear.told).toEqual(['port-lost'])
    await clock.move(3)
    const device = await plug.plugIn()
    await comesTrue(clock, () => ear.told.includes('restored'))
    device.write(text('again\n'))
    await eventually(() => ear.heard() === 'again\n')
    expect(ear.told).toEqual(['port-lost', 'restored'])
    await source.close()
  })

  it('notices a device pulled in the middle of sending', async () => {
    const device = await plug.plugIn()
    const clock = movedClock()
    const source = createSerialSource(plug.path, 115_200, clock)
    const ear = listener()
    await source.open(ear)
    await eventually(async () => {
      await writeAll(device, text('12345\n'.repeat(200)))
      return ear.heard() !== ''
    })
    plug.pull()
    await comesTrue(clock, () => ear.told.length > 0)
    expect(ear.told).toEqual(['port-lost'])
    expect(ear.heard().length).toBeGreaterThan(0)
    await source.close()
  })

  it('is silent after it was closed, also in the middle of looking for a lost device, and may be closed twice', async () => {
    const device = await plug.plugIn()
    const clock = movedClock()
    const source = createSerialSource(plug.path, 115_200, clock)
    const ear = listener()
    await source.open(ear)
    await source.close()
    await source.close()
    await eventually(() => !device.hasReader())
    await source.open(ear)
    plug.pull()
    await comesTrue(clock, () => ear.told.length === 1)
    await source.close()
    await plug.plugIn()
    await clock.move(10)
    // Had it taken the port again, or looked for it still, another could not have it to itself.
    const other = createSerialSource(plug.path, 115_200, clock)
    const otherEar = listener()
    await other.open(otherEar)
    plug.device().write(text('for another\n'))
    await eventually(() => otherEar.heard() === 'for another\n')
    await other.close()
    expect(ear.told).toEqual(['port-lost'])
    expect(ear.heard()).toBe('')
  })

  it('refuses a port that another program holds', async () => {
    await plug.plugIn()
    const first = createSerialSource(plug.path, 115_200, movedClock())
    await first.open(listener())
    const second = createSerialSource(plug.path, 115_200, movedClock())
    await expect(second.open(listener())).rejects.toMatchObject({ code: 'port-busy' })
    await first.close()
    await second.open(listener())
    await second.close()
  })

  it('says when there is no such port, and when it is no port at all', async () => {
    const missing = createSerialSource(plug.path, 115_200, movedClock())
    await expect(missing.open(listener())).rejects.toMatchObject({ code: 'port-missing' })
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-'))
    try {
      const path = join(folder, 'notes.txt')
      writeFileSync(path, 'no port')
      const file = createSerialSource(path, 115_200, movedClock())
      await expect(file.open(listener())).rejects.toMatchObject({
        code: 'port-missing',
        message: `${path} is not a serial port.`,
      })
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})
