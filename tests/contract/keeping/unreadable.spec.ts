import { expect, it } from 'vitest'
import { leftOut } from '#contract/keeping/unreadable.ts'

const record = (name: string) => ({ record: name, because: 'area is below 0' })

it('what several readings left out is named in their order', () => {
  const readings = [{ unreadable: [record('break 2')] }, {}, { unreadable: [record('check 1'), record('check 4')] }]
  expect(leftOut(...readings)).toEqual({ unreadable: ['break 2', 'check 1', 'check 4'].map(record) })
})

it('where nothing was left out an answer has no such part', () => {
  expect(leftOut({}, { unreadable: undefined }, {})).toEqual({})
})
