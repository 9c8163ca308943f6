import { describe, expect, test } from 'vitest'
import { visibleJson, visibleText } from '#words/visibleText.ts'

const steering = 'C1\u001b[2J\u0007\u009b31m\u200b\u202e\u2028\r\ud800'

describe('visibleText', () => {
  test('writes what cannot be seen, or steers a terminal, as its number', () => {
    expect(visibleText(steering)).toBe('C1<U+001B>[2J<U+0007><U+009B>31m<U+200B><U+202E><U+2028><U+000D><U+D800>')
    expect(visibleText('\u{e0041}')).toBe('<U+E0041>')
  })

  test('leaves lines, columns and every script as they are', () => {
    const plain = 'Épicéa\tŚrut 接着 木\n½ µm − “x” 🪵\r\n'
    expect(visibleText(plain)).toBe(plain)
  })
})

describe('visibleJson', () => {
  test('says the same, without a character that a terminal would obey', () => {
    const json = visibleJson(JSON.stringify({ number: `${steering}\u{e0041}` }))
    expect(JSON.parse(json)).toEqual({ number: `${steering}\u{e0041}` })
    expect(json).toMatch(/^[\x20-\x7e]*$/)
  })
})
