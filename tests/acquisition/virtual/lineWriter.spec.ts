import { describe, expect, it } from 'vitest'
import { LineWriter } from '#acquisition/virtual/lineWriter.ts'
import { createRandom } from '#domain/numbers/random.ts'

describe('writer of lines', () => {
  it('writes whole numbers as the language itself does', () => {
    const random = createRandom(12)
    const writer = new LineWriter()
    let expected = ''
    for (let i = 0; i < 30_000; i++) {
      const value = Math.round((random.unit() - 0.5) * 10 ** random.wholeBetween(0, 14)) + 0
      writer.whole(value)
      writer.text(' ')
      expected += `${value} `
    }
    expect(new TextDecoder().decode(writer.take())).toBe(expected)
    expect(writer.take()).toHaveLength(0)
  })

  it('writes as many hexadecimal digits as are asked for', () => {
    const writer = new LineWriter()
    for (const value of [0, 0x29b1, 0xffff]) {
      writer.hexadecimal(value, 4)
      writer.hexadecimal(value, 2)
    }
    expect(new TextDecoder().decode(writer.take())).toBe('00000029B1B1FFFFFF')
  })
})
