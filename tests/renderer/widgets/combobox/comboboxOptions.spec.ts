import { expect, test } from 'vitest'
import { isAmong, markedAfterKey, optionsThatFit, questionAbout } from '#renderer/widgets/combobox/comboboxOptions.ts'

const options = ['casein C1', 'epoxy E4', 'cross-linking PVA V5', 'E4 epoxy, old'].map((value) => ({ value }))
const fitting = (typed: string) => optionsThatFit(options, typed).map(({ value }) => value)

test('offers what holds every typed word, what begins with them first', () => {
  expect(fitting('')).toHaveLength(4)
  expect(fitting('e4')).toEqual(['E4 epoxy, old', 'epoxy E4'])
  expect(fitting('PVA linking')).toEqual(['cross-linking PVA V5'])
  expect(fitting('hide glue')).toEqual([])
  expect(optionsThatFit([{ value: '7', detail: 'opened 2 May 2031' }], 'may')).toHaveLength(1)
})

test('marks one option after the other, and none between the last and the first', () => {
  const down = (marked: number) => markedAfterKey('ArrowDown', marked, 3)
  expect([-1, 0, 1, 2].map(down)).toEqual([0, 1, 2, -1])
  expect([-1, 0, 2].map((marked) => markedAfterKey('ArrowUp', marked, 3))).toEqual([2, -1, 1])
  expect(markedAfterKey('ArrowDown', -1, 0)).toBe(-1)
})

test('knows a name however it is written', () => {
  expect(isAmong(options, 'CASEIN  c1')).toBe(true)
  expect(isAmong(options, 'casein')).toBe(false)
})

test('asks about a text that is none of the options, and about an option what is doubtful in it', () => {
  const lots = [{ value: 'C1-1', question: 'It expired.' }, { value: 'C1-2' }]
  expect(['c1-1', 'C1-2', 'C1-3', ' '].map((typed) => questionAbout(lots, typed, 'New.'))).toEqual([
    ...['It expired.', '', 'New.', ''],
  ])
})
