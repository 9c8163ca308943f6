import { expect, it } from 'vitest'
import { differenceFigure } from '#figures/programme/differenceFigure.ts'

const size = { widthPx: 400, emPx: 12.5 }
const curve = [
  { blocks: 3, differencePercent: 30.7 },
  { blocks: 4, differencePercent: 23.8 },
  { blocks: 5, differencePercent: 20.2 },
]
const texts = (figure: ReturnType<typeof differenceFigure>) =>
  figure.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))

it('says every point, and where the plan stands', () => {
  const figure = differenceFigure({ curve, planned: 4, wantedPercent: 25 }, size)
  expect(figure.readings.map(({ words }) => words)).toEqual([
    '3 blocks a cell: 31 %',
    '4 blocks a cell: 24 %',
    '5 blocks a cell: 20 %',
  ])
  expect(figure.description).toContain('As planned, 4 blocks a cell: 24 %.')
  expect(texts(figure)).toEqual(expect.arrayContaining(['wanted: 25 %', 'as planned']))
})

it('marks no plan that is not on the curve, and no difference that nobody wants', () => {
  const figure = differenceFigure({ curve, planned: 2, wantedPercent: null }, size)
  expect(figure.description).not.toContain('As planned')
  expect(texts(figure).some((text) => text.startsWith('wanted'))).toBe(false)
})
