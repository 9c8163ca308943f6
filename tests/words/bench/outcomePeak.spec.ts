import { expect, test } from 'vitest'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { isStoring, outcomePeakN } from '#words/bench/outcomePeak.ts'

const host = createScriptedHost()
host.addBreak(4812)
const stored = host.bench()

test('is the load of the record that the outcome belongs to, and until then the running peak', () => {
  expect(outcomePeakN({ ...stored, runningPeak: 4790 })).toBe(4812)
  expect(outcomePeakN({ ...stored, outcomeBreakId: null, runningPeak: 3100 })).toBe(3100)
})

test('takes no reading in counts for a force', () => {
  expect(outcomePeakN({ ...stored, outcomeBreakId: null, runningPeak: 310_000, scale: { kind: 'none' } })).toBeNull()
})

test('a capture that ended is being stored until the break that it became is known', () => {
  expect(isStoring({ phase: 'broke', outcomeBreakId: null })).toBe(true)
  expect(isStoring({ phase: 'unloaded', outcomeBreakId: null })).toBe(true)
  expect(isStoring({ phase: 'broke', outcomeBreakId: 1 })).toBe(false)
  expect(isStoring({ phase: 'loading', outcomeBreakId: null })).toBe(false)
})
