import { expect, test } from 'vitest'
import { verifyCommand } from '#shells/commands/verifyCommand.ts'
import { headText, headUse } from '#words/keeping/headWords.ts'

test('writes a head as the command verify takes it', () => {
  expect(headText({ count: 412, hash: '5e'.repeat(32) })).toBe(`412:${'5e'.repeat(32)}`)
  expect(verifyCommand.options.head).toMatchObject({ value: 'COUNT:HASH' })
  expect(headUse).toContain('breakledger verify --head')
})
