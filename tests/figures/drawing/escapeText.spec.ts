import { describe, expect, it } from 'vitest'
import { escapeText } from '#figures/drawing/escapeText.ts'

describe('escapeText', () => {
  it('lets no text end an element, begin one or leave an attribute', () => {
    expect(escapeText('</svg><script>alert("1")</script>')).not.toMatch(/[<>"]/)
    expect(escapeText(`a'b&c`)).toBe('a&#39;b&amp;c')
  })
  it('escapes what is escaped already once more, so that it reads as it was typed', () => {
    expect(escapeText('&lt;')).toBe('&amp;lt;')
  })
  it('puts the replacement character for what XML cannot hold', () => {
    expect(escapeText('a\u0000b\u001fc\ufffed\ud800e')).toBe('a\ufffdb\ufffdc\ufffdd\ufffde')
  })
  it('keeps line ends, tabs and letters of every script', () => {
    expect(escapeText('ä\t\n漢字 😀')).toBe('ä\t\n漢字 😀')
  })
})
