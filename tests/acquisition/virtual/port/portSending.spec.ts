import { describe, expect, it } from 'vitest'
import { createPortSending } from '#acquisition/virtual/port/portSending.ts'
import { createVirtualAmplifier } from '#acquisition/virtual/virtualAmplifier.ts'

/** A reader that takes so many bytes at each turn, and what it was given. */
function readerOf(mostBytes: number) {
  const taken: number[] = []
  const reader = {
    mostBytes,
    write(bytes: Uint8Array) {
      const now = bytes.subarray(0, reader.mostBytes)
      taken.push(...now)
      return now.length
    },
    text: () => new TextDecoder().decode(Uint8Array.from(taken)),
  }
  return reader
}

const amplifier = () =>
  createVirtualAmplifier({
    scenario: 'idle',
    rateHz: 80,
    seed: 5,
    breaks: null,
    lineFormat: { name: 'number', columns: [] },
  })
const all = () => new TextDecoder().decode(amplifier().bytesUntil(2))

describe('sending to a port', () => {
  it('gives a reader that keeps up all that is due, once', () => {
    const reader = readerOf(1e6)
    const sending = createPortSending(reader, amplifier())
    sending.send(1)
    sending.send(2)
    expect(reader.text()).toBe(all())
    expect({ waits: sending.isWaiting(), lost: sending.samplesLost() }).toEqual({ waits: false, lost: 0 })
  })
  it('keeps for a slow reader what it did not take, in order, without a loss', () => {
    const reader = readerOf(5)
    const sending = createPortSending(reader, amplifier())
    sending.send(2)
    expect(sending.isWaiting()).toBe(true)
    while (!sending.flush()) expect(all().startsWith(reader.text())).toBe(true)
    expect(reader.text()).toBe(all())
    expect(sending.samplesLost()).toBe(0)
  })
  it('counts the lines that a reader which is gone never gets, a line of which a part went over too', () => {
    const reader = readerOf(3)
    const sending = createPortSending(reader, amplifier())
    sending.send(2)
    sending.flush()
    const whole = reader.text().split('\n').length - 1
    sending.losePending()
    expect(sending.isWaiting()).toBe(false)
    expect(sending.samplesLost()).toBe(all().split('\n').length - 1 - whole)
  })
  it('counts what is sent while nobody listens', () => {
    const reader = readerOf(1e6)
    const sending = createPortSending(reader, amplifier())
    sending.loseUntil(2)
    sending.send(2)
    expect(reader.text()).toBe('')
    // The first line is empty, so that a reader that comes later knows where a line begins
    expect(sending.samplesLost()).toBe(all().split('\n').length - 2)
  })
})
