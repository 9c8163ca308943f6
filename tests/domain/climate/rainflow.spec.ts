import { describe, expect, it } from 'vitest'
import { rainflowCounter, rainflowCycles, turningPoints } from '#domain/climate/rainflow.ts'

describe('rainflow counting', () => {
  it('counts the example of ASTM E1049-85, figure 6 (from memory)', () => {
    const cycles = rainflowCycles([-2, 1, -3, 5, -1, 3, -4, 4, -2])
    const counts = new Map<number, number>()
    for (const { range, count } of cycles) counts.set(range, (counts.get(range) ?? 0) + count)
    expect(Object.fromEntries(counts)).toEqual({ 3: 0.5, 4: 1.5, 6: 0.5, 8: 1, 9: 0.5 })
  })

  it('sees turning points alone', () => {
    expect(turningPoints([0, 1, 2, 2, 3, 1, 1, 0, 5])).toEqual([0, 3, 0, 5])
    expect(rainflowCycles([0, 1, 2, 3, 1, 0, 5])).toEqual(rainflowCycles([0, 3, 0, 5]))
  })

  it('counts a history that comes value by value as it counts the whole', () => {
    const history = [-2, 1, -3, 5, -1, 3, -4, 4, -2]
    const heard: object[] = []
    const counter = rainflowCounter((cycle) => heard.push(cycle))
    for (const value of history) counter.push(value)
    counter.end()
    expect(heard).toEqual(rainflowCycles(history))
  })

  it('finds no cycle where nothing swings', () => {
    expect(rainflowCycles([])).toEqual([])
    expect(rainflowCycles([4, 4, 4])).toEqual([])
  })

  it('counts a rise alone as half a cycle', () => {
    expect(rainflowCycles([1, 2, 4])).toEqual([{ range: 3, mean: 2.5, count: 0.5 }])
  })
})
