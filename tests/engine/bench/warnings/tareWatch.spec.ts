import { expect, test } from 'vitest'
import { createTareWatch, tareIsOldAfterS } from '#engine/bench/warnings/tareWatch.ts'

const takenMs = Date.UTC(2031, 3, 6, 8)
const tare = { offset: 480, sd: 1, readings: 80, takenAt: new Date(takenMs).toISOString() }
const after = (seconds: number) => new Date(takenMs + seconds * 1000).toISOString()
const rest = { idle: true, steady: true, startThreshold: 20, unit: 'N' } as const

function atRest(forceN: number, fromS = 0) {
  const timeS = Float64Array.from({ length: 200 }, (_, i) => fromS + i / 80)
  const loadRange: [number, number] = [forceN - 1, forceN + 1]
  return { timeS, force: timeS.map((_, i) => forceN + (i % 2 === 0 ? 1 : -1)), loadRange }
}

test('has nothing to say of a fresh zero on a bench that stays there', () => {
  const watch = createTareWatch()
  watch.frame(atRest(0.5))
  expect(watch.warning(tare, after(60), rest)).toBeNull()
  expect(watch.warning(null, after(60), rest)).toBeNull()
})

test('says how old a zero is that is older than fifteen minutes', () => {
  const watch = createTareWatch()
  expect(watch.warning(tare, after(tareIsOldAfterS), rest)).toBeNull()
  expect(watch.warning(tare, after(20 * 60 + 5), rest)).toEqual({ kind: 'old', minutes: 20 })
})

test('says so when the bench has drifted by more than a quarter of the start threshold', () => {
  const watch = createTareWatch()
  watch.frame(atRest(4.9))
  expect(watch.warning(tare, after(60), rest)).toBeNull()
  watch.frame(atRest(6, 10))
  expect(watch.warning(tare, after(60), rest)).toMatchObject({
    kind: 'drifted',
    reads: expect.closeTo(6, 1),
    unit: 'N',
  })
  expect(watch.warning(tare, after(60), { ...rest, steady: false })).toBeNull()
  expect(watch.warning(tare, after(60), { ...rest, idle: false })).toBeNull()
  watch.restart()
  expect(watch.warning(tare, after(60), rest)).toBeNull()
})

test('says that a force far below zero may be a load on a reversed cell, while it still moves', () => {
  const watch = createTareWatch()
  const moving = { ...rest, steady: false }
  watch.frame(atRest(-199))
  expect(watch.warning(tare, after(60), moving)).toBeNull()
  watch.frame(atRest(-202, 10))
  expect(watch.warning(tare, after(60), moving)).toMatchObject({
    kind: 'far-below-zero',
    reads: expect.closeTo(-202, 1),
  })
  expect(watch.warning(tare, after(60), { ...moving, startThreshold: null })).toBeNull()
  expect(watch.warning(tare, after(60), { ...moving, idle: false })).toBeNull()
  watch.restart()
  expect(watch.warning(tare, after(60), moving)).toBeNull()
})

test('takes no lone glitch for a bench that reads something', () => {
  for (const glitch of [-84_000, 84_000]) {
    const watch = createTareWatch()
    const frame = atRest(0)
    for (const i of [100, 190]) frame.force[i] = glitch
    watch.frame(frame)
    expect(watch.warning(tare, after(60), { ...rest, steady: glitch > 0 })).toBeNull()
    watch.frame({ ...frame, loadRange: [-84_000, 84_000], timeS: frame.timeS.map((timeS) => timeS + 10) })
    expect(watch.warning(tare, after(60), { ...rest, steady: glitch > 0 })).not.toBeNull()
  }
})

test('waits for what can be load', () => {
  const watch = createTareWatch()
  watch.frame({ ...atRest(500), loadRange: null })
  expect(watch.warning(tare, after(60), rest)).toBeNull()
})

test('takes no load that is gone again for a bench that reads something', () => {
  for (const loadN of [3000, -3000]) {
    const watch = createTareWatch()
    watch.frame(atRest(loadN))
    expect(watch.warning(tare, after(60), rest)).not.toBeNull()
    // A few readings at rest: less than a second of them.
    const { timeS, force } = atRest(0, 2.5)
    watch.frame({ timeS: timeS.slice(0, 3), force: force.slice(0, 3), loadRange: [-1, 1] })
    expect(watch.warning(tare, after(60), rest)).not.toBeNull()
    watch.frame({ timeS: timeS.slice(3, 60), force: force.slice(3, 60), loadRange: [-1, 1] })
    watch.frame(atRest(0, 4))
    expect(watch.warning(tare, after(60), rest)).toBeNull()
  }
})
