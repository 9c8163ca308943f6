import { describe, expect, it } from 'vitest'
import type { BreakRecord, BreakSummary } from '#contract/breaks/break.ts'
import { createCaptureProgress } from '#engine/bench/capture/captureProgress.ts'

const summaryOf = (breakId: number, note = '') => ({ breakId, note }) as BreakSummary

function progressOf() {
  const now = { capturing: true }
  const archive = { break: async (breakId: number) => ({ summary: summaryOf(breakId, 'read again') }) as BreakRecord }
  return { now, progress: createCaptureProgress(archive, () => now.capturing) }
}

describe('the capture that runs', () => {
  it('has the peak of its own frames alone', () => {
    const { now, progress } = progressOf()
    progress.frame({ peak: 100 })
    expect(progress.runningPeak()).toBe(100)
    progress.begin()
    expect(progress.runningPeak()).toBeNull()
    now.capturing = false
    progress.frame({ peak: 300 })
    expect(progress.runningPeak()).toBeNull()
  })
  it('has its number until it is stored, and none when it was over before the number came', () => {
    const { now, progress } = progressOf()
    progress.stored(7, null, true)
    expect(progress.captureBreakId()).toBe(7)
    progress.stored(6, summaryOf(6), true)
    expect(progress.captureBreakId()).toBe(7)
    progress.stored(7, summaryOf(7), true)
    expect(progress.captureBreakId()).toBeNull()
    now.capturing = false
    progress.stored(8, null, true)
    expect(progress.captureBreakId()).toBeNull()
  })
  it('is the break before once it is stored, read again after records changed', async () => {
    const { progress } = progressOf()
    await progress.refresh()
    expect(progress.lastBreak()).toBeNull()
    progress.stored(7, summaryOf(7), true)
    await progress.refresh()
    expect(progress.lastBreak()).toEqual(summaryOf(7, 'read again'))
  })
  it('is not the break before that one, where this is read again while the newer one is stored', async () => {
    const reading = Promise.withResolvers<BreakRecord>()
    const progress = createCaptureProgress({ break: () => reading.promise }, () => false)
    progress.stored(7, summaryOf(7), true)
    const refreshed = progress.refresh()
    progress.stored(8, summaryOf(8), true)
    reading.resolve({ summary: summaryOf(7, 'read again') } as BreakRecord)
    await refreshed
    expect(progress.lastBreak()).toEqual(summaryOf(8))
  })
  it('leaves no peak of one device to the next', () => {
    const { progress } = progressOf()
    progress.frame({ peak: 100 })
    progress.forgetPeak()
    expect(progress.runningPeak()).toBeNull()
  })
})

describe('the capture that ended', () => {
  /** A capture that came to so many newtons, with its last frame a little below. */
  function captured({ now, progress }: ReturnType<typeof progressOf>, peakN: number): void {
    now.capturing = true
    progress.begin()
    progress.frame({ peak: peakN - 10 })
    now.capturing = false
    progress.ended(peakN)
  }

  it('says what it came to, and not the break before, until its own record is there', () => {
    const made = progressOf()
    const { progress } = made
    captured(made, 4812)
    progress.stored(1, summaryOf(1), true)
    expect(progress.outcomeBreakId()).toBe(1)
    captured(made, 3100)
    expect(progress.runningPeak()).toBe(3100)
    expect(progress.outcomeBreakId()).toBeNull()
    progress.stored(2, summaryOf(2), true)
    expect(progress.outcomeBreakId()).toBe(2)
  })
  it('has no outcome by a record that comes late, of the one before', () => {
    const made = progressOf()
    const { progress } = made
    captured(made, 4812)
    captured(made, 3100)
    progress.stored(1, summaryOf(1), false)
    expect(progress.lastBreak()?.breakId).toBe(1)
    expect(progress.outcomeBreakId()).toBeNull()
  })
})
