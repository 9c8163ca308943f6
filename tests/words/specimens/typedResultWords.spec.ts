import { expect, it } from 'vitest'
import {
  typedSetAsideChoice,
  typedSetAsideMeaning,
  typedSetAsideWords,
  typedSourceToFind,
  typedSourceWords,
} from '#words/specimens/typedResultWords.ts'

const force = (valueN: number) => `${valueN} N`
const imported = {
  source: 'import',
  ...{ row: 7, column: '3', resolutionN: null, readBy: '' },
  file: { fileName: 'blocks.xlsx', fileSha256: '3f2a9c11d0b4'.padEnd(64, '0') },
} as const

it('says of an imported result from which file, row and column', () => {
  expect(typedSourceWords(imported, force)).toBe('peak only, from blocks.xlsx (3f2a9c11d0b4, row 7, column 3)')
  expect(typedSourceWords({ ...imported, column: null }, force)).toBe(
    'peak only, from blocks.xlsx (3f2a9c11d0b4, row 7)',
  )
})

it('says of a dial its step and who read it, where that is known', () => {
  const dial = { ...imported, source: 'dial' as const, row: null, column: null, file: null }
  expect(typedSourceWords(dial, force)).toBe('peak only, read from a dial')
  expect(typedSourceWords({ ...dial, resolutionN: 50, readBy: 'Ada Thole' }, force)).toBe(
    'peak only, read from a dial in steps of 50 N by Ada Thole',
  )
})

it('is found by all that says where it comes from', () => {
  const dial = { ...imported, source: 'dial' as const, row: null, column: null, file: null, resolutionN: 50 }
  const words = typedSourceToFind({ ...dial, readBy: 'Ada Thole' })
  for (const part of ['peak only', 'dial', '50.0', '11.2', 'Ada Thole']) expect(words).toContain(part)
  for (const part of ['imported', 'blocks.xlsx', '3f2a9c11d0b4', 'row 7', 'column 3'])
    expect(typedSourceToFind(imported)).toContain(part)
})

it('says of a result that is set aside who did it and why, and what becomes of its block', () => {
  const word = { by: 'Ada', reason: 'misread', recordedAt: '2031-05-02T09:30:00.000Z' }
  expect(typedSetAsideWords({ ...word, cause: null })).toBe('Set aside by Ada: misread')
  expect(typedSetAsideWords({ ...word, cause: 'wrong-block' })).toBe('Set aside by Ada: of another block; misread')
  for (const of of ['dial', 'import', 'file'] as const) {
    expect(typedSetAsideChoice('other', of)).toBe('broken all the same')
    expect(typedSetAsideChoice('wrong-block', of)).toMatch(/other/)
    expect(typedSetAsideMeaning('other', of)).toMatch(/shelf/)
    expect(typedSetAsideMeaning('wrong-block', of)).toMatch(/for the press again/)
  }
})
