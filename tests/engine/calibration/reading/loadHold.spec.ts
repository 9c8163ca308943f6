import { expect, test } from 'vitest'
import { createLoadHold } from '#engine/calibration/reading/loadHold.ts'

/** A reading that climbs by 1 a second, 10 times a second from a time that is not zero. */
function played(
  hold: ReturnType<typeof createLoadHold>,
  seconds: number,
  silent: (timeS: number) => boolean = () => false,
) {
  for (let i = 0; i <= seconds * 10; i++) if (!silent(i / 10)) hold.push(5000 + i / 10, 200 + i / 10)
}

test('reads about 30 s and about the end, each as a mean over a short window', () => {
  const hold = createLoadHold(120, 2)
  played(hold, 119)
  expect(hold.over()).toBe(false)
  expect(hold.share()).toBeCloseTo(119 / 121, 6)
  const whole = createLoadHold(120, 2)
  played(whole, 121.2)
  expect(whole.over()).toBe(true)
  expect(whole.share()).toBe(1)
  // On a straight climb the mean of a window is the value at its middle.
  expect(whole.held()).toEqual({
    fromS: 30,
    toS: 120,
    fromReading: expect.closeTo(230, 6),
    toReading: expect.closeTo(320, 6),
  })
})

test('says nothing of creep when the signal was away at one of the two times', () => {
  for (const away of [30, 120]) {
    const hold = createLoadHold(120, 2)
    played(hold, 122, (timeS) => Math.abs(timeS - away) < 1.5)
    expect(hold.over()).toBe(true)
    expect(hold.held()).toBeNull()
  }
})
