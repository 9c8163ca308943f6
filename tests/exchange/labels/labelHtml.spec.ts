import { expect, it } from 'vitest'
import { sheetOfGrid } from '#domain/programme/labels/sheetGeometry.ts'
import { labelHtml } from '#exchange/labels/labelHtml.ts'

it('names the size of the paper and needs no other file', () => {
  const html = labelHtml(['<svg></svg>'], sheetOfGrid('Letter', 4, 10), 'A <title>')
  expect(html).toContain('@page { size: 215.9mm 279.4mm; margin: 0 }')
  expect(html).toContain('<title>A &lt;title&gt;</title>')
  expect(html).not.toMatch(/<script|<link|src=|href=|url\(/)
})
