import { expect, it } from 'vitest'
import { colourName, coloursFoundWords } from '#words/specimens/import/colourWords.ts'

// Named as in the CSS Color Module (W3C): yellow, orange, red, lime, blue, magenta-like pinks, grey, white, black
it.each([
  ['FFFF00', 'yellow'],
  ['FFA500', 'orange'],
  ['FFC000', 'orange'],
  ['FF0000', 'red'],
  ['00FF00', 'green'],
  ['90EE90', 'light green'],
  ['006400', 'dark green'],
  ['0000FF', 'blue'],
  ['00008B', 'dark blue'],
  ['ADD8E6', 'light turquoise'],
  ['EE82EE', 'light violet'],
  ['FF69B4', 'pink'],
  ['8B4513', 'brown'],
  ['808080', 'grey'],
  ['D3D3D3', 'light grey'],
  ['FFFFFF', 'white'],
  ['000000', 'black'],
  ['theme 4', 'theme colour 4'],
  ['theme 4 +0.60', 'theme colour 4, lighter'],
  ['theme 4 -0.25', 'theme colour 4, darker'],
  ['pattern', 'a hatching'],
])('calls %s %s', (fill, name) => expect(colourName(fill)).toBe(name))

it('has a word for no colour', () => expect(colourName(null)).toBe('no colour'))

it('lists colours as a mapping names them, with how they look and how often each is there', () => {
  const fills = [
    { fill: 'FFFF00', count: 2 },
    { fill: 'FF0000', count: 1 },
  ]
  expect(coloursFoundWords(fills)).toBe(
    'Colours of cells, for "fills" of the mapping: FFFF00 (yellow) in 2 cells, FF0000 (red) in 1 cell.',
  )
})
