import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { createCheckedDecoder, exclusiveOr } from '#acquisition/lineFormats/checkedLine.ts'

describe('check value of a line', () => {
  it.each([
    // Published NMEA 0183 sentences: File Exchange entry 36385 "gps_chksum", and the manual page of serialcs nmeaChksum.
    ['$GPGGA,000003.071,7900.56904,N,16607.52019,W,1,09,0.8,4.64,M,,,,*26'],
    ['$PSRF103,00,01,00,01*25'],
  ])('is the one printed in %s', (sentence) => {
    const bytes = Uint8Array.from(sentence, (letter) => letter.charCodeAt(0))
    const star = sentence.indexOf('*')
    expect(exclusiveOr(bytes, 1, star)).toBe(Number.parseInt(sentence.slice(star + 1), 16))
  })

  it('is right in every example of the notes on firmware', () => {
    const notes = readFileSync(new URL('../../../firmware-notes/README.md', import.meta.url), 'utf8')
    const examples = notes.match(/\$BL,[\d,-]+\*[0-9A-F]{2}/g) ?? []
    expect(examples.length).toBeGreaterThanOrEqual(2)
    for (const example of examples) {
      const bytes = Uint8Array.from(`${example}\n`, (letter) => letter.charCodeAt(0))
      expect(createCheckedDecoder().decode(bytes, 0)).toBe(example.length)
    }
  })
})
