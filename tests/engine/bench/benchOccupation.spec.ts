import { expect, test } from 'vitest'
import { createBenchOccupation, type Occupant } from '#engine/bench/benchOccupation.ts'

function bench(change: { hearing?: boolean; capturing?: boolean; hasZero?: boolean; armed?: boolean } = {}) {
  const state = { hearing: true, capturing: false, hasZero: true, armed: true, held: false, ...change }
  const occupation = createBenchOccupation({
    hearing: () => state.hearing,
    capturing: () => state.capturing,
    hasZero: () => state.hasZero,
    armed: () => state.armed,
    arm: (armed) => {
      state.armed = armed
    },
    holdPress: (held) => {
      state.held = held
    },
    changed() {},
  })
  return { state, occupation }
}
const nobody: Occupant = { reading() {}, lost() {} }

test('gives the occupant every reading, and only while he has the bench', () => {
  const { occupation } = bench()
  const readings: number[] = []
  const release = occupation.take('calibration', { ...nobody, reading: (_timeS, reading) => readings.push(reading) })
  occupation.reading(0, 7)
  release()
  occupation.reading(1, 8)
  expect(readings).toEqual([7])
})

test('looks for no break from then on until the bench is free and empty', () => {
  const { state, occupation } = bench()
  const release = occupation.take('calibration', nobody)
  expect(state).toMatchObject({ armed: false, held: true })
  occupation.empty()
  expect(state.armed).toBe(false)
  release()
  expect(state).toMatchObject({ armed: false, held: false })
  expect(occupation.awaitsEmpty()).toBe(true)
  occupation.empty()
  expect(state.armed).toBe(true)
})

test('leaves a bench disarmed that was disarmed before', () => {
  const { state, occupation } = bench({ armed: false })
  occupation.take('check-weight', nobody)()
  occupation.empty()
  expect(state.armed).toBe(false)
})

test('remembers through a second calibration before the bench was empty that it was armed', () => {
  const { state, occupation } = bench()
  occupation.take('calibration', nobody)()
  occupation.take('calibration', nobody)()
  occupation.empty()
  expect(state.armed).toBe(true)
})

test.each([
  ['hearing', 'not-connected'],
  ['hasZero', 'not-stable'],
] as const)('is not to be had without %s', (what, code) => {
  expect(() => bench({ [what]: false }).occupation.take('calibration', nobody)).toThrow(
    expect.objectContaining({ code }),
  )
})

test('is not to be had during a capture, nor by two', () => {
  expect(() => bench({ capturing: true }).occupation.take('calibration', nobody)).toThrow(/A break is being recorded/)
  const { occupation } = bench()
  occupation.take('check-weight', nobody)
  expect(() => occupation.take('calibration', nobody)).toThrow(/A check with a weight is running/)
  expect(() => occupation.arm(true)).toThrow(/during a check with a weight/)
})
