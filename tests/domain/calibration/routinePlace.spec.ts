import { describe, expect, it } from 'vitest'
import type { RoutinePosition } from '#contract/calibration/calibrationRoutine.ts'
import { heaviestPosition, lastTaken, positionAtHand, weightsBefore } from '#domain/calibration/routinePlace.ts'

const position = (forceN: number, weights: string[], standing: RoutinePosition['standing']): RoutinePosition => ({
  ...{ run: 1, direction: 'up', forceN, weights, standing },
  ...{ reading: null, residualN: null },
})
const positions = [
  position(0, [], 'taken'),
  position(98, ['10 kg'], 'taken'),
  position(196, ['20 kg'], 'ahead'),
  position(49, ['5 kg'], 'ahead'),
]

describe('the place of a routine', () => {
  it('is the position that a reading is wanted of, or none', () => {
    expect(positionAtHand({ current: 2, positions })).toBe(positions[2])
    expect(positionAtHand({ current: null, positions })).toBeNull()
  })
  it('has the heaviest load of the plan, whatever was read', () => {
    expect(heaviestPosition({ positions })).toBe(positions[2])
    expect(heaviestPosition({ positions: [] })).toBeNull()
    const twice = [...positions, position(196, ['10 kg', 'ten of 1 kg'], 'ahead')]
    expect(heaviestPosition({ positions: twice })).toBe(positions[2])
  })
  it('repeats the reading that was taken last, and none before the first', () => {
    expect(lastTaken({ current: 2, positions })).toBe(1)
    expect(lastTaken({ current: null, positions })).toBe(1)
    expect(lastTaken({ current: 1, positions })).toBe(0)
    expect(lastTaken({ current: 0, positions })).toBeNull()
  })
  it('comes from what hung at the position before, and from nothing at the first', () => {
    expect(weightsBefore({ current: 2, positions })).toEqual(['10 kg'])
    expect(weightsBefore({ current: 0, positions })).toEqual([])
    expect(weightsBefore({ current: null, positions })).toEqual([])
  })
})
