import { describe, expect, it } from 'vitest'
import { nextReading } from '#renderer/parts/nextReading.ts'

describe('nextReading', () => {
  it('goes from point to point and stops at the ends', () => {
    expect(nextReading('ArrowRight', null, 3)).toBe(0)
    expect(nextReading('ArrowRight', 0, 3)).toBe(1)
    expect(nextReading('ArrowDown', 2, 3)).toBe(2)
    expect(nextReading('ArrowLeft', 2, 3)).toBe(1)
    expect(nextReading('ArrowUp', 0, 3)).toBe(0)
    expect(nextReading('ArrowLeft', null, 3)).toBe(2)
  })
  it('goes to the ends with Home and End', () => {
    expect(nextReading('Home', 2, 3)).toBe(0)
    expect(nextReading('End', null, 3)).toBe(2)
  })
  it('leaves a point with Escape, and leaves Escape to the page where there is none', () => {
    expect(nextReading('Escape', 1, 3)).toBeNull()
    expect(nextReading('Escape', null, 3)).toBeUndefined()
  })
  it('leaves all other keys alone, and all of them where there is no point', () => {
    expect(nextReading('Enter', 1, 3)).toBeUndefined()
    expect(nextReading('ArrowRight', null, 0)).toBeUndefined()
  })
})
