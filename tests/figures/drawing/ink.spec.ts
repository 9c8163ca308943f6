import { describe, expect, it } from 'vitest'
import { figureSheet, inkAttributes } from '#figures/drawing/ink.ts'
import { inks } from '#figures/drawing/mark.ts'

const lines = ['zero', 'centre', 'limit', 'rated', 'seated'] as const

describe('the forms of inks', () => {
  it('tell lines with a meaning apart by width or dashes, so that colour is never the only sign', () => {
    const forms = lines.map((ink) => JSON.stringify(inkAttributes(ink)))
    expect(new Set(forms).size).toBe(lines.length)
  })
})

describe('figureSheet', () => {
  it('colours every ink, and each colour can be set by a page', () => {
    for (const ink of inks) expect(figureSheet).toMatch(new RegExp(`\\.ink-${ink}\\{(?:fill|stroke):var\\(--figure-`))
  })
  it('fetches nothing and can end no style element', () => {
    expect(figureSheet).not.toMatch(/url|@import|</)
  })
})
