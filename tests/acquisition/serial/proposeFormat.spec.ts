import { describe, expect, it } from 'vitest'
import { proposeFormat } from '#acquisition/serial/proposeFormat.ts'
import { createVirtualAmplifier } from '#acquisition/virtual/virtualAmplifier.ts'
import type { LineFormatChoice } from '#contract/bench/source.ts'
import { createRandom } from '#domain/numbers/random.ts'

const bytes = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0))

function heard(lineFormat: LineFormatChoice, rateHz: number, damagedShare = 0) {
  const amplifier = createVirtualAmplifier({ scenario: 'idle', rateHz, seed: 3, lineFormat, damagedShare })
  // As on a real port: from the middle of a line to the middle of a line.
  return amplifier.bytesUntil(3).subarray(5, -3)
}

describe('proposal of a line format', () => {
  it.each([10, 80, 1000])('recognises every format at %i Hz, with a damaged line now and then', (rateHz) => {
    const formats: LineFormatChoice[] = [
      { name: 'number', columns: [] },
      { name: 'checked', columns: [] },
      { name: 'crc', columns: [] },
      { name: 'columns', columns: ['time_us', 'counts'] },
      { name: 'columns', columns: ['time_s', 'counts'] },
      { name: 'columns', columns: ['counts', 'time_us'] },
    ]
    for (const format of formats)
      for (const damagedShare of [0, 0.05]) {
        const { proposal, fit, linesPerSecond } = proposeFormat(heard(format, rateHz, damagedShare), 3)
        expect(proposal).toEqual(format)
        expect(fit).toBeGreaterThan(0.85)
        expect(Math.abs(linesPerSecond! - rateHz)).toBeLessThan(0.1 * rateHz)
      }
  })

  it('tells a running number from a time, and skips columns that are neither', () => {
    const format: LineFormatChoice = { name: 'columns', columns: ['seq', 'time_us', '-', 'counts'] }
    expect(proposeFormat(heard(format, 80), 3).proposal).toEqual({
      name: 'columns',
      columns: ['seq', 'time_us', '-', 'counts'],
    })
  })

  it('names the unit that a device claims', () => {
    const { proposal, advice } = proposeFormat(bytes('1.25 kgf\n'.repeat(20)), 2)
    expect(proposal).toEqual({ name: 'number', columns: [] })
    expect(advice).toContain('kgf')
  })

  it('promises of checked lines no more than their check finds', () => {
    const advice = (name: 'checked' | 'crc') => proposeFormat(heard({ name, columns: [] }, 80), 3).advice
    expect(advice('checked')).toContain('damaged ones mostly')
    expect(advice('crc')).toContain('CRC')
  })

  it('takes mostly unprintable bytes for the wrong baud rate and proposes others', () => {
    const random = createRandom(2)
    const noise = Uint8Array.from({ length: 600 }, () => random.wholeBetween(0, 255))
    const { proposal, advice, lines } = proposeFormat(noise, 2, 9600)
    expect(proposal).toBeNull()
    expect(advice).toContain('at 9600 baud')
    expect(advice).toContain('115200')
    expect(advice.replace('at 9600 baud', '')).not.toContain('9600')
    expect(lines.length).toBeGreaterThan(0)
    for (const line of lines) expect(line).toMatch(/^[ -~·]*$/)
  })

  it('says what to look at when nothing arrives, no line ends, or no format fits', () => {
    expect(proposeFormat(new Uint8Array(0), 2)).toMatchObject({ proposal: null, linesPerSecond: null })
    expect(proposeFormat(new Uint8Array(0), 2).advice).toContain('Nothing arrived')
    expect(proposeFormat(bytes('123 456 789'), 2).advice).toContain('no whole line')
    const words = proposeFormat(bytes('weight is stable now\nall is well\n'.repeat(5)), 2)
    expect(words.proposal).toBeNull()
    expect(words.advice).toContain('no format')
  })

  it('shows the newest lines and leaves out the halves at both ends', () => {
    const { lines } = proposeFormat(bytes(`5\n${Array.from({ length: 50 }, (_, i) => 100 + i).join('\n')}\n99`), 1)
    expect(lines).toHaveLength(20)
    expect(lines[0]).toBe('130')
    expect(lines.at(-1)).toBe('149')
  })
})
