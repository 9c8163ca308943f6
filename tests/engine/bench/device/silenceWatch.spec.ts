import { describe, expect, it } from 'vitest'
import { createSilenceWatch } from '#engine/bench/device/silenceWatch.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'

const text = (words: string) => new TextEncoder().encode(words)

function watchWith() {
  const clock = movedClock()
  let changes = 0
  const watch = createSilenceWatch(clock, { name: 'checked', columns: [] }, 9600, () => changes++)
  return { clock, watch, changes: () => changes }
}

describe('createSilenceWatch', () => {
  it('is silent until the first reading, and again when none came for three seconds', async () => {
    const { clock, watch, changes } = watchWith()
    expect(watch.silent()).toBe(true)
    watch.bytes(text('12\n'))
    watch.reading()
    expect(watch.silent()).toBe(false)
    await clock.move(5)
    expect(watch.silent()).toBe(true)
    expect(watch.problem()).toMatchObject({ code: 'not-readable', message: 'Nothing has arrived for 3 seconds.' })
    expect(watch.problem()?.hint).toContain('power')
    expect(changes()).toBe(2)
  })

  it('says that nothing can be read when bytes go on without a reading, and takes it back with the first one', async () => {
    const { clock, watch } = watchWith()
    for (let i = 0; i < 5; i++) {
      watch.bytes(text('words and no value\n'.repeat(2)))
      await clock.move(1)
    }
    expect(watch.problem()).toMatchObject({ code: 'not-readable' })
    expect(watch.problem()?.message).toContain('"checked"')
    watch.reading()
    expect(watch.problem()).toBeNull()
    expect(watch.silent()).toBe(false)
  })

  it.each([
    ['noise, as of another baud rate', new Uint8Array(40).fill(0xf8), /at 9600 baud is not text.*Try 115200/],
    ['lines of another format', text('-48213\n-48215\n-48210\n-48212\n-48213\n-48211\n'), /line format number/],
    ['columns', text('1,48213\n2,48215\n3,48217\n4,48214\n5,48213\n'), /line format columns .*counts/],
    ['text without line ends', text('48213 48215 48217 48214 48213 48216 48217 '), /line feed/],
    ['words', text('sensor fault\nsensor fault\nsensor fault\nsensor fault\n'), /fit no format/],
  ])('proposes what to do about %s', async (_what, bytes, hint) => {
    const { clock, watch } = watchWith()
    for (let i = 0; i < 6; i++) {
      watch.bytes(bytes)
      await clock.move(1)
    }
    expect(watch.problem()?.message).toContain('Bytes arrive')
    expect(watch.problem()?.hint).toMatch(hint)
  })

  it('does not propose the format that it reads already', async () => {
    const { clock, watch } = watchWith()
    for (let i = 0; i < 6; i++) {
      watch.bytes(text('\n$BL,0,0,5*17\n$BL,0,0,5*17\n$BL,0,0,5*17\n'))
      await clock.move(1)
    }
    expect(watch.problem()?.message).toBe('Lines of the format "checked" arrive, but none of them gives a reading yet.')
    expect(watch.problem()?.hint).not.toContain('line format')
  })

  it('tells other columns from its own', async () => {
    const clock = movedClock()
    const own = createSilenceWatch(clock, { name: 'columns', columns: ['-', 'counts'] }, null, () => {})
    for (let i = 0; i < 6; i++) {
      own.bytes(text('1,48213\n2,48215\n3,48217\n4,48214\n5,48213\n'))
      await clock.move(1)
    }
    expect(own.problem()?.hint).toMatch(/line format columns .*counts/)
  })

  it('looks no more once stopped', async () => {
    const { clock, watch, changes } = watchWith()
    watch.reading()
    watch.stop()
    await clock.move(60)
    expect(changes()).toBe(1)
  })
})
