import { expect, it } from 'vitest'
import type { Figure } from '#figures/drawing/figure.ts'
import { figurePage } from '#figures/drawing/figurePage.ts'

const figure: Figure = {
  ...{ widthPx: 200, heightPx: 100, emPx: 10, title: 'Strength', description: 'Two blocks.' },
  marks: [{ kind: 'circle', ink: 'point', x: 5, y: 5, r: 2 }],
  readings: [{ x: 5, y: 5, words: 'one' }],
}

it('lays title and origin around a figure, on white, and moves what can be read with it', () => {
  const page = figurePage(figure, ['From an archive.', 'All results are simulated.'])
  const texts = page.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
  expect(texts).toEqual(['Strength', 'From an archive.', 'All results are simulated.'])
  expect(page.marks[0]).toMatchObject({ kind: 'band', ink: 'sheet', width: page.widthPx, height: page.heightPx })
  const moved = page.marks.find((mark) => mark.kind === 'moved')!
  expect(page.readings[0]).toMatchObject({ x: 5 + moved.by.x, y: 5 + moved.by.y })
  expect(page.description).toBe('Two blocks. From an archive. All results are simulated.')
})

it('wraps what is too long, and grows by that', () => {
  const long = figurePage(figure, ['word '.repeat(40)])
  expect(long.heightPx).toBeGreaterThan(figurePage(figure, ['word']).heightPx)
  const lowest = Math.max(...long.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.y] : [])))
  expect(lowest).toBeLessThan(long.heightPx)
})
