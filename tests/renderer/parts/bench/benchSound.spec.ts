import { expect, it } from 'vitest'
import { cueOf } from '#renderer/parts/bench/benchSound.ts'

const quiet = { phase: 'waiting', overload: 'none' } as const

it('is silent while nothing changes', () => expect(cueOf(quiet, quiet)).toBeNull())
it('sounds once when loading begins and when it broke', () => {
  expect(cueOf(quiet, { ...quiet, phase: 'loading' })).toBe('loading')
  expect(cueOf({ ...quiet, phase: 'loading' }, { ...quiet, phase: 'broke' })).toBe('broke')
})
it('lets the gravest win', () => {
  expect(cueOf({ ...quiet, phase: 'loading' }, { phase: 'broke', overload: 'alarm' })).toBe('alarm')
  expect(cueOf(quiet, { phase: 'loading', overload: 'warning' })).toBe('warning')
})
it('does not warn on the way down from an alarm', () => {
  expect(cueOf({ phase: 'loading', overload: 'alarm' }, { phase: 'loading', overload: 'warning' })).toBeNull()
})
