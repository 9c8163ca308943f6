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
  it('writes what cannot be seen, or XML cannot hold, as its number', () => {
    expect(escapeText('a\u0000b\u200bc\ud800d\u202e')).toBe(
      'a&lt;U+0000&gt;b&lt;U+200B&gt;c&lt;U+D800&gt;d&lt;U+202E&gt;',
    )
    expect(escapeText('a\ufffeb\uffffc')).toBe('a\ufffdb\ufffdc')
  })
  it('keeps line ends, tabs and letters of every script', () => {
    expect(escapeText('ä\t\n漢字 😀')).toBe('ä\t\n漢字 😀')
  })
})
