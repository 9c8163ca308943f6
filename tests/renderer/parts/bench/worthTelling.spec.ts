import { expect, test } from 'vitest'
import type { TroubleMessage } from '#contract/errors.ts'
import { isWorthTelling } from '#renderer/parts/bench/worthTelling.ts'
import { benchAtRest } from '#tests/fakes/benchAtRest.ts'

const lost: TroubleMessage = { code: 'port-lost', message: 'The amplifier went away.', hint: 'Check the plug.' }
const full: TroubleMessage = { code: 'disk-full', message: 'The disk is full.', hint: 'Make room.' }
const bench = {
  connection: { ...benchAtRest.connection, status: 'lost', problem: lost },
  storageProblem: full,
} as const

test('what the bench or the device page says itself is not said twice', () => {
  expect(isWorthTelling(lost, { page: 'bench' }, bench)).toBe(false)
  expect(isWorthTelling(lost, { page: 'connect' }, bench)).toBe(false)
  expect(isWorthTelling(full, { page: 'bench' }, bench)).toBe(false)
})

test('everywhere else the frame says it, and what is none of theirs everywhere', () => {
  expect(isWorthTelling(lost, { page: 'archive' }, bench)).toBe(true)
  expect(isWorthTelling(full, { page: 'connect' }, bench)).toBe(true)
  expect(isWorthTelling({ ...lost, message: 'Something else.' }, { page: 'bench' }, bench)).toBe(true)
})

test('a device that was lost and then disconnected on purpose is not called lost', () => {
  const closed = { ...bench, connection: { ...bench.connection, status: 'closed', problem: null } } as const
  expect(isWorthTelling(lost, { page: 'archive' }, closed)).toBe(false)
  expect(isWorthTelling(lost, { page: 'bench' }, closed)).toBe(false)
})

test('a device that is back is no trouble any more', () => {
  const back = { ...bench, connection: { ...bench.connection, status: 'open', problem: null } } as const
  expect(isWorthTelling(lost, { page: 'archive' }, back)).toBe(false)
  expect(isWorthTelling(full, { page: 'archive' }, back)).toBe(true)
})
