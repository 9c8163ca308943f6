import { expect, it } from 'vitest'
import { createSteppedClock } from '#engine/core/steppedClock.ts'

it('calls back in order of what falls due, also what a callback asks for', () => {
  const clock = createSteppedClock(Date.UTC(2031, 0, 1))
  const called: string[] = []
  clock.after(2, () => called.push(`late at ${clock.nowS()}`))
  clock.after(1, () => {
    called.push(`early at ${clock.nowS()}`)
    clock.after(0.5, () => called.push(`again at ${clock.nowS()}`))
  })
  const callOff = clock.after(1.2, () => called.push('called off'))
  callOff()
  clock.step(3)
  expect(called).toEqual(['early at 1', 'again at 1.5', 'late at 2'])
  expect(clock.nowS()).toBe(3)
  expect(clock.instant()).toBe('2031-01-01T00:00:03.000Z')
})
