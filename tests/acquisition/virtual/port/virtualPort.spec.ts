import { describe, expect, it } from 'vitest'
import { systemClock } from '#acquisition/clock.ts'
import { createSerialSource } from '#acquisition/serial/serialSource.ts'
import { createBenchModel } from '#acquisition/virtual/benchModel.ts'
import type { PseudoTerminal } from '#acquisition/virtual/port/pseudoTerminal.ts'
import { openVirtualPort } from '#acquisition/virtual/port/virtualPort.ts'
import type { LineFormatChoice } from '#contract/bench/source.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'
import { eventually } from '#tests/fakes/ports/ptyPlug.ts'
import { readLines } from '#tests/fakes/streams/readLines.ts'

const formats: LineFormatChoice[] = [
  { name: 'number', columns: [] },
  { name: 'columns', columns: ['time_us', 'counts'] },
  { name: 'checked', columns: [] },
  { name: 'crc', columns: [] },
]

/** A terminal whose reader the test plays: comes, goes, and takes so many bytes at a time. */
function scriptedTerminal() {
  const state = { reader: false, room: Number.POSITIVE_INFINITY, closed: false, heard: '' }
  const terminal: PseudoTerminal = {
    path: '/dev/pts/scripted',
    hasReader: () => state.reader && !state.closed,
    write(bytes) {
      if (!state.reader || state.closed) return 0
      const taken = bytes.subarray(0, Math.min(bytes.length, state.room))
      state.heard += String.fromCharCode(...taken)
      return taken.length
    },
    close() {
      state.closed = true
    },
  }
  return {
    state,
    open: async () => terminal,
    lines: () => state.heard.split('\n').filter((line) => line !== '').length,
  }
}

describe.runIf(process.platform !== 'win32')('virtual port on a real pseudo-terminal', () => {
  it.each(formats)('is read without a sample lost as $name $columns, and says how many it sent', async (lineFormat) => {
    const options = { scenario: 'glitches', rateHz: 500, seed: 7, breaks: 1 } as const
    const port = await openVirtualPort({ ...options, lineFormat, speed: null }, systemClock)
    const source = createSerialSource(port.path, 115_200, systemClock)
    const values: number[] = []
    let rejected = 0
    const parser = readLines(
      lineFormat,
      (value) => values.push(value),
      () => rejected++,
    )
    await source.open({ bytes: (chunk) => parser.push(chunk), lost: () => {}, restored: () => {}, ended: () => {} })
    await eventually(() => port.amplifier.over())
    await eventually(() => values.length === port.amplifier.lines().sent)
    await source.close()
    const { samplesSent, samplesLost, ending, truths } = await port.finished
    expect({ ending, samplesLost, rejected }).toEqual({ ending: 'over', samplesLost: 0, rejected: 0 })
    expect(values).toHaveLength(samplesSent)
    expect(truths).toHaveLength(1)
    const bench = createBenchModel(options)
    const samples = {
      timeUs: new Float64Array(samplesSent),
      counts: new Float64Array(samplesSent),
      sequence: new Float64Array(samplesSent),
    }
    bench.fill(samples)
    expect(values).toEqual([...samples.counts])
    expect(truths).toEqual(bench.truths)
  })
})

describe('run of a virtual port', () => {
  it('does not begin before a program has opened the port and set it up', async () => {
    const clock = movedClock()
    const { state, open, lines } = scriptedTerminal()
    const port = await openVirtualPort({ scenario: 'idle', rateHz: 100, seed: 1 }, clock, open)
    await clock.move(10)
    state.reader = true
    await clock.move(0.1)
    expect(state.heard).toBe('')
    await clock.move(1.1)
    expect(lines()).toBeGreaterThan(95)
    expect(lines()).toBeLessThan(102)
    port.stop()
    const { ending, samplesSent } = await port.finished
    expect(ending).toBe('stopped')
    expect(samplesSent).toBe(lines())
    expect(state.closed).toBe(true)
  })

  it('waits for a slow reader, and loses nothing', async () => {
    const clock = movedClock()
    const { state, open, lines } = scriptedTerminal()
    state.reader = true
    state.room = 7
    const port = await openVirtualPort({ scenario: 'idle', rateHz: 100, seed: 1, endS: 2, speed: null }, clock, open)
    await clock.move(60)
    const { samplesSent, samplesLost } = await port.finished
    expect(samplesSent).toBe(200)
    expect(samplesLost).toBe(0)
    expect(lines()).toBe(200)
  })

  it('keeps the port for a reader that is behind, and ends as soon as it has left', async () => {
    const clock = movedClock()
    const { state, open } = scriptedTerminal()
    state.reader = true
    const port = await openVirtualPort({ scenario: 'idle', rateHz: 100, seed: 1, endS: 2 }, clock, open)
    await clock.move(22)
    expect(state.closed).toBe(false)
    state.reader = false
    await clock.move(0.1)
    expect(state.closed).toBe(true)
    expect((await port.finished).ending).toBe('over')
  })

  it('stands still while nobody reads, or loses samples and counts them, as chosen', async () => {
    for (const unread of ['wait', 'lose'] as const) {
      const clock = movedClock()
      const { state, open, lines } = scriptedTerminal()
      state.reader = true
      const port = await openVirtualPort({ scenario: 'idle', rateHz: 100, seed: 1, endS: 3, unread }, clock, open)
      await clock.move(1.2)
      state.reader = false
      await clock.move(1)
      state.reader = true
      await clock.move(40)
      const { samplesSent, samplesLost } = await port.finished
      expect(samplesSent).toBe(lines())
      expect(samplesSent + samplesLost).toBe(300)
      if (unread === 'wait') expect(samplesLost).toBe(0)
      else expect(Math.abs(samplesLost - 120)).toBeLessThan(5)
    }
  })

  it('is unplugged at the device time asked for', async () => {
    const clock = movedClock()
    const { state, open, lines } = scriptedTerminal()
    state.reader = true
    const port = await openVirtualPort({ scenario: 'brittle', rateHz: 100, seed: 1, unplugAtS: 1.5 }, clock, open)
    await clock.move(5)
    const { ending, samplesSent, truths } = await port.finished
    expect({ ending, samplesSent, truths }).toEqual({ ending: 'unplugged', samplesSent: 150, truths: [] })
    expect(lines()).toBe(150)
    expect(state.closed).toBe(true)
  })
})
