import { describe, expect, it } from 'vitest'
import { crc16, exclusiveOr, lineChecks } from '#acquisition/lineFormats/lineCheck.ts'

const ascii = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0))

describe('check value of a line', () => {
  it.each([
    // Published NMEA 0183 sentences: File Exchange entry 36385 "gps_chksum", and the manual page of serialcs nmeaChksum.
    ['$GPGGA,000003.071,7900.56904,N,16607.52019,W,1,09,0.8,4.64,M,,,,*26'],
    ['$PSRF103,00,01,00,01*25'],
  ])('is the one printed in %s', (sentence) => {
    const star = sentence.indexOf('*')
    expect(exclusiveOr(ascii(sentence), 1, star)).toBe(Number.parseInt(sentence.slice(star + 1), 16))
  })

  it.each([
    // The check value that the catalogue of CRC algorithms gives for CRC-16/CCITT-FALSE (there CRC-16/IBM-3740).
    [ascii('123456789'), 0x29b1],
    // Python 3: binascii.crc_hqx(data, 0xFFFF)
    [ascii(''), 0xffff],
    [ascii('A'), 0xb915],
    [ascii('BC,0,0,5'), 0xe787],
    [ascii('BC,42,1234567,-8123'), 0xa70c],
    [ascii('BC,4294967295,4294967295,-8388608'), 0x0953],
    [Uint8Array.from({ length: 256 }, (_, byte) => byte), 0x3fbd],
  ])('is the CRC that others give for the same bytes (%#)', (bytes, value) => {
    expect(crc16(bytes, 0, bytes.length)).toBe(value)
  })

  it('leaves out what stands before and behind', () => {
    for (const { of } of Object.values(lineChecks))
      expect(of(ascii('$123456789*'), 1, 10)).toBe(of(ascii('123456789'), 0, 9))
  })

  it('lets two wrong digits pass about one time in 13 as an exclusive or, and never as a CRC', () => {
    const passed = { checked: 0, crc: 0 }
    let tried = 0
    const sent = ascii('BL,17,123456,00')
    const heard = sent.slice()
    for (let pair = 0; pair < 100; pair++) {
      sent.set(ascii(String(pair).padStart(2, '0')), 13)
      for (let wrong = 0; wrong < 100; wrong++) {
        heard.set(ascii(String(wrong).padStart(2, '0')), 13)
        if (heard[13] === sent[13] || heard[14] === sent[14]) continue
        tried++
        for (const name of ['checked', 'crc'] as const) {
          const { of } = lineChecks[name]
          if (of(sent, 0, 15) === of(heard, 0, 15)) passed[name]++
        }
      }
    }
    expect(tried).toBe(8100)
    expect(tried / passed.checked).toBeCloseTo(13.2, 1)
    expect(passed.crc).toBe(0)
  })

  it('finds, as a CRC, up to three wrong bits anywhere in the longest line, and every burst of 16', () => {
    // A CRC is linear: what wrong bits do to it does not depend on the line, and is the exclusive or of what each does.
    const blank = new Uint8Array(256)
    const undamaged = crc16(blank, 0, 256)
    const doneBy = (damaged: Uint8Array) => crc16(damaged, 0, 256) ^ undamaged
    const single = Array.from({ length: 8 * 256 }, (_, bit) => {
      const damaged = blank.slice()
      damaged[bit >> 3] = 0x80 >> (bit & 7)
      return doneBy(damaged)
    })
    const known = new Set(single)
    expect(known.has(0)).toBe(false)
    expect(known.size).toBe(single.length)
    for (let i = 0; i < single.length; i++)
      for (let j = 0; j < i; j++)
        if (known.has(single[i]! ^ single[j]!)) throw new Error(`bits ${i} and ${j} and a third`)
    for (let burst = 1; burst < 2 ** 16; burst++) {
      const damaged = blank.slice(0, 4)
      damaged[1] = burst >> 8
      damaged[2] = burst & 255
      if (crc16(damaged, 0, 4) === crc16(blank, 0, 4)) throw new Error(`burst ${burst}`)
    }
  })
})
