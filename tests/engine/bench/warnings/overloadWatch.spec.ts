import { describe, expect, it } from 'vitest'
import { createOverloadWatch } from '#engine/bench/warnings/overloadWatch.ts'

describe('createOverloadWatch', () => {
  it('warns above 90 % and raises the alarm above 100 %, either way of the force', () => {
    const watch = createOverloadWatch()
    watch.look(900, 1000, 0, false)
    expect(watch.level()).toBe('none')
    watch.look(-901, 1000, 1, false)
    expect(watch.level()).toBe('warning')
    watch.look(1001, 1000, 2, false)
    expect(watch.level()).toBe('alarm')
  })

  it('holds the highest level for five seconds after the load is gone', () => {
    const watch = createOverloadWatch()
    watch.look(1200, 1000, 0, true)
    watch.look(10, 1000, 4.9, true)
    expect(watch.level()).toBe('alarm')
    watch.look(10, 1000, 5, true)
    expect(watch.level()).toBe('none')
  })

  it('keeps the highest share of a capture and follows the force outside one', () => {
    const watch = createOverloadWatch()
    watch.begin()
    watch.look(500, 1000, 0, true)
    watch.look(200, 1000, 1, true)
    expect(watch.share()).toBe(0.5)
    watch.look(100, 1000, 2, false)
    expect(watch.share()).toBe(0.1)
  })

  it('says nothing when the capacity is unknown', () => {
    const watch = createOverloadWatch()
    watch.look(1e6, null, 0, true)
    expect(watch.share()).toBeNull()
    expect(watch.level()).toBe('none')
  })
})
