import { describe, expect, it } from 'vitest'
import { createSilenceWatch } from '#engine/silenceWatch.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'

function watchWith() {
  const clock = movedClock()
  let changes = 0
  const watch = createSilenceWatch(clock, { name: 'checked', columns: [] }, () => changes++)
  return { clock, watch, changes: () => changes }
}

describe('createSilenceWatch', () => {
  it('is silent until the first reading, and again when none came for three seconds', async () => {
    const { clock, watch, changes } = watchWith()
    expect(watch.silent()).toBe(true)
    watch.bytes(20)
    watch.reading()
    expect(watch.silent()).toBe(false)
    await clock.move(5)
    expect(watch.silent()).toBe(true)
    expect(watch.problem()).toBeNull()
    expect(changes()).toBe(2)
  })

  it('says that nothing can be read when bytes go on without a reading, and takes it back with the first one', async () => {
    const { clock, watch } = watchWith()
    for (let i = 0; i < 5; i++) {
      watch.bytes(30)
      await clock.move(1)
    }
    expect(watch.problem()).toMatchObject({ code: 'not-readable' })
    expect(watch.problem()?.message).toContain('"checked"')
    watch.reading()
    expect(watch.problem()).toBeNull()
    expect(watch.silent()).toBe(false)
  })

  it('looks no more once stopped', async () => {
    const { clock, watch, changes } = watchWith()
    watch.reading()
    watch.stop()
    await clock.move(60)
    expect(changes()).toBe(1)
  })
})
