import { expect, test } from 'vitest'
import { createShownOutcome } from '#engine/bench/capture/shownOutcome.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'

test('says how a capture ended for eight seconds, each anew', async () => {
  const clock = movedClock()
  const outcome = createShownOutcome(clock, () => {})
  outcome.show('broke')
  await clock.move(5)
  outcome.show('unloaded')
  await clock.move(7.9)
  expect(outcome.shown()).toBe('unloaded')
  await clock.move(0.2)
  expect(outcome.shown()).toBeNull()
})

test('says nothing more when the next specimen is taken, nor afterwards', async () => {
  const clock = movedClock()
  let changes = 0
  const outcome = createShownOutcome(clock, () => changes++)
  outcome.show('broke')
  outcome.show(null)
  expect(outcome.shown()).toBeNull()
  await clock.move(20)
  expect(changes).toBe(2)
})
