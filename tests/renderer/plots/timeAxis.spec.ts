import { expect, it } from 'vitest'
import { secondsOf, themedAxis } from '#renderer/plots/timeAxis.ts'

it('writes times without what binary fractions add, and with a true minus', () => {
  expect(secondsOf([0.1 + 0.2, -1.5, 0, 12])).toEqual(['0.3 s', '−1.5 s', '0 s', '12 s'])
})
it('takes the colours of the theme each time that it is drawn', () => {
  const colours = { quiet: 'grey', grid: 'silver', font: '12px sans-serif' }
  const axis = themedAxis(
    () => colours as never,
    (splits) => splits.map(String),
    40,
    50,
  )
  const stroke = axis.stroke as () => string
  expect(stroke()).toBe('grey')
  colours.quiet = 'white'
  expect(stroke()).toBe('white')
})
