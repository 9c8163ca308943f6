import { expect, test } from 'vitest'
import type { TroubleMessage } from '#contract/errors.ts'
import { isToldOnPage } from '#renderer/pages/frame/toldOnPage.ts'
import { benchAtRest } from '#tests/fakes/benchAtRest.ts'

const lost: TroubleMessage = { code: 'port-lost', message: 'The amplifier went away.', hint: 'Check the plug.' }
const full: TroubleMessage = { code: 'disk-full', message: 'The disk is full.', hint: 'Make room.' }
const bench = { connection: { ...benchAtRest.connection, problem: lost }, storageProblem: full }

test('what the bench or the device page says itself is not said twice', () => {
  expect(isToldOnPage(lost, { page: 'bench' }, bench)).toBe(true)
  expect(isToldOnPage(lost, { page: 'connect' }, bench)).toBe(true)
  expect(isToldOnPage(full, { page: 'bench' }, bench)).toBe(true)
})

test('everywhere else the frame says it, and what is none of theirs everywhere', () => {
  expect(isToldOnPage(lost, { page: 'archive' }, bench)).toBe(false)
  expect(isToldOnPage(full, { page: 'connect' }, bench)).toBe(false)
  expect(isToldOnPage({ ...lost, message: 'Something else.' }, { page: 'bench' }, bench)).toBe(false)
})
