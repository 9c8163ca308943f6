import { expect, test } from 'vitest'
import { readBreak } from '#archive/breaks/breakRecords.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import { overruledFlags } from '#archive/breaks/overruledFlags.ts'
import type { CurveEvent, Flag } from '#contract/breaks/evaluation.ts'
import { madeEvent } from '#tests/fakes/madeEvents.ts'
import { archiveInMemory, evaluationOf, morning, rampAndFall, storeBreak } from '../storedStudy.ts'

const events: CurveEvent[] = [
  madeEvent({ kind: 'gap', startTimeS: 0.1, endTimeS: 0.15 }),
  madeEvent({ kind: 'clipping', startTimeS: 0.5, endTimeS: 0.8 }),
]
const found: Flag[] = ['gap', 'clipped', 'over-capacity', 'gap-at-peak', 'sampling-too-slow', 'above-verified-range']

test('leave out what speaks of the peak found, and keep what speaks of the capture', () => {
  expect(overruledFlags(found, events, 0.4)).toEqual(['gap', 'over-capacity', 'sampling-too-slow'])
})

test('keep a sample clipped that stood at the end of the converter itself', () => {
  expect(overruledFlags(found, events, 0.5)).toContain('clipped')
  expect(overruledFlags(found, events, 0.49)).not.toContain('clipped')
})

test('say of a sample next to missing ones what is said of a peak there, whether the peak found lay there or not', () => {
  expect(overruledFlags(found, events, 0.15)).toEqual(['gap', 'over-capacity', 'gap-at-peak', 'sampling-too-slow'])
  expect(overruledFlags(['gap'], events, 0.12)).toEqual(['gap', 'gap-at-peak'])
})

test('stand in the summary of a break beside the word itself, and those found stand again when it is taken back', () => {
  const database = archiveInMemory()
  const curve = rampAndFall(500, 600_000)
  storeBreak(database, null, curve)
  const made = evaluationOf(curve, { flags: ['clipped', 'over-capacity'], events })
  addEvaluation(database, { ...made, breakId: 1 })
  const word = { breakId: 1, recordedAt: morning, by: 'bench', reason: 'cracked', specimenId: null }
  addDecision(database, { ...word, kind: 'peak-picked', sample: { timeS: 0.2, reading: 266_667 } })
  expect(readBreak(database, 1).summary.flags).toEqual(['over-capacity', 'peak-picked'])
  addDecision(database, { ...word, kind: 'peak-picked', sample: { timeS: 0.6, reading: 600_000 } })
  expect(readBreak(database, 1).summary.flags).toEqual(['clipped', 'over-capacity', 'peak-picked'])
  addDecision(database, { ...word, kind: 'peak-as-found' })
  expect(readBreak(database, 1).summary.flags).toEqual(['clipped', 'over-capacity'])
})
