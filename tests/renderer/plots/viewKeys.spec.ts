import { expect, it } from 'vitest'
import { centreOf, isWhole, spanAfterKey } from '#renderer/plots/viewKeys.ts'

const whole = { fromS: 0, toS: 10 }
const view = { span: { fromS: 2, toS: 6 }, whole, leastS: 0.1, cursorS: null }

it('zooms about the cursor, and about the middle when the cursor is out of sight', () => {
  expect(spanAfterKey('+', view)).toEqual({ fromS: 3, toS: 5 })
  expect(spanAfterKey('=', { ...view, cursorS: 3 })).toEqual({ fromS: 2.5, toS: 4.5 })
  expect(centreOf({ ...view, cursorS: 9 })).toBe(4)
  expect(spanAfterKey('-', { ...view, cursorS: 9 })).toEqual({ fromS: 0, toS: 8 })
})

it('moves by half of what is shown, and shows all', () => {
  expect(spanAfterKey('PageDown', view)).toEqual({ fromS: 4, toS: 8 })
  expect(spanAfterKey('PageUp', view)).toEqual({ fromS: 0, toS: 4 })
  expect(spanAfterKey('0', view)).toEqual(whole)
})

it('leaves every other key to others', () => {
  for (const key of ['ArrowLeft', 'Home', 'Enter', 'p', '1']) expect(spanAfterKey(key, view)).toBeNull()
})

it('knows when all is shown', () => {
  expect(isWhole(view)).toBe(false)
  expect(isWhole({ span: { fromS: -1, toS: 10 }, whole })).toBe(true)
  expect(isWhole({ span: { fromS: 0, toS: 9.9 }, whole })).toBe(false)
})
