import { expect, test } from 'vitest'
import { createPortPace } from '#acquisition/virtual/port/portPace.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'

test('goes on from where the device stood when a reader came, so many times as fast as the clock', async () => {
  const clock = movedClock()
  const pace = createPortPace(clock, 4, 100)
  await clock.move(30)
  pace.start(7)
  await clock.move(2)
  pace.start(50)
  expect(pace.dueS()).toBe(15)
  await clock.move(1000)
  expect(pace.dueS()).toBe(100)
})

test('stands still while nobody reads, and goes on from there', async () => {
  const clock = movedClock()
  const pace = createPortPace(clock, 1, 100)
  pace.start(0)
  await clock.move(3)
  pace.halt()
  expect(pace.started()).toBe(false)
  await clock.move(60)
  pace.start(3)
  await clock.move(1)
  expect(pace.dueS()).toBe(4)
})

test('is due as a whole at once when it goes as fast as the reader takes it', () => {
  const pace = createPortPace(movedClock(), null, 100)
  pace.start(0)
  expect(pace.dueS()).toBe(100)
})
