import { afterEach, expect, it } from 'vitest'
import { isAnythingUnsaved, watchUnsaved } from '#renderer/widgets/forms/unsaved.ts'

const ends: (() => void)[] = []
const watch = (isUnsaved: boolean, keptOnLeaving = false) =>
  ends.push(watchUnsaved({ place: () => null, isUnsaved: () => isUnsaved, keptOnLeaving }))
afterEach(() => {
  for (const end of ends.splice(0)) end()
})

it('is anything that is half written, for as long as it is there', () => {
  watch(false)
  expect(isAnythingUnsaved('page')).toBe(false)
  watch(true)
  expect(isAnythingUnsaved('page')).toBe(true)
  ends.pop()!()
  expect(isAnythingUnsaved('page')).toBe(false)
})

it('is not what keeps itself when its page goes, unless the window closes', () => {
  watch(true, true)
  expect(isAnythingUnsaved('page')).toBe(false)
  expect(isAnythingUnsaved('window')).toBe(true)
})
