import { expect, it } from 'vitest'
import { sheetOfGrid } from '#domain/programme/labels/sheetGeometry.ts'
import { labelSvg } from '#exchange/labels/labelSvg.ts'

const sheet = sheetOfGrid('A4', 5, 13)
const svg = (number: string, group: string) => labelSvg({ number, group }, { xMm: 6, yMm: 12 }, sheet)
const sizes = (text: string) => [...text.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size))

it('writes the number larger than its group', () => {
  const [number, ...group] = sizes(svg('12340', 'casein C1, loft'))
  expect(number).toBeGreaterThan(1.5 * Math.max(...group))
})

it('keeps a long number within the label', () => {
  const [size] = sizes(svg('Block 12 of the old bench', ''))
  expect(25 * 0.7 * size!).toBeLessThanOrEqual(sheet.labelWidthMm * 0.55)
})

it('takes nothing that a person wrote for markup', () => {
  expect(svg('<b>&"', '<script>')).not.toMatch(/<b>|<script>/)
})

it('draws a line to cut along only where it is asked for', () => {
  expect(svg('28', '')).toContain('stroke=')
  expect(labelSvg({ number: '28', group: '' }, { xMm: 0, yMm: 0 }, { ...sheet, outlined: false })).not.toContain(
    'stroke=',
  )
})
