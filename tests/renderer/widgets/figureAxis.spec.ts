import { describe, expect, it } from 'vitest'
import { axisOver } from '#renderer/widgets/figureAxis.ts'

describe('axisOver', () => {
  it('holds every value between round numbers', () => {
    expect(axisOver([0, 49, 559.28])).toEqual({ from: 0, to: 600, ticks: [0, 200, 400, 600], decimals: 0 })
  })
  it('names steps below 1 with as many decimals as they need', () => {
    const { from, to, decimals } = axisOver([-0.031, 0.044])
    expect(from).toBeLessThanOrEqual(-0.031)
    expect(to).toBeGreaterThanOrEqual(0.044)
    expect(decimals).toBe(2)
  })
  it('gives room to values that are all alike', () => {
    const { from, to } = axisOver([3, 3])
    expect(from).toBeLessThan(3)
    expect(to).toBeGreaterThan(3)
  })
  it('stands for 0 to 1 when there is nothing to draw', () => {
    expect(axisOver([])).toMatchObject({ from: 0, to: 1 })
  })
})
