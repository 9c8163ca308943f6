import { describe, expect, it } from 'vitest'
import { benchPhase } from '#contract/bench/bench.ts'
import {
  advanceView,
  enterSituation,
  type LiveView,
  leadS,
  rollingWindowS,
  situationOf,
  startView,
} from '#renderer/plots/live/liveView.ts'

const least = 100
const settle = (view: LiveView, latestS: number, highest: number) => {
  let now = view
  for (let i = 0; i < 200; i++) now = advanceView(now, latestS, highest, least, 1 / 60, false)
  return now
}

describe('the live view', () => {
  it('shows the newest seconds while nothing is loaded', () => {
    const view = settle(startView(least), 100, 3)
    expect([view.shownFromS, view.shownToS]).toEqual([100 - rollingWindowS, 100])
  })

  it('stands still during a capture while the curve grows into it', () => {
    const capturing = enterSituation(settle(startView(least), 100, 3), 'capturing', 100, least)
    const early = settle(capturing, 101, 50)
    const later = settle(early, 105, 60)
    expect(early.shownFromS).toBe(100 - leadS)
    expect([later.shownFromS, later.shownToS]).toEqual([early.shownFromS, early.shownToS])
  })

  it('holds the whole curve after the break, however long the stream goes on', () => {
    const capturing = settle(enterSituation(startView(least), 'capturing', 10, least), 16, 900)
    const held = settle(enterSituation(capturing, 'held', 16, least), 60, 900)
    expect([held.shownFromS, held.shownToS]).toEqual([capturing.shownFromS, capturing.shownToS])
  })

  it('gives the height of a broken curve back only when it has left the view', () => {
    const after = enterSituation(
      settle(enterSituation(startView(least), 'capturing', 0, least), 6, 900),
      'rolling',
      7,
      least,
    )
    expect(settle(after, 8, 900).shownCeiling).toBeGreaterThan(900)
    expect(settle(after, 40, 3).shownCeiling).toBe(100)
  })

  it('begins each capture at the least height', () => {
    const tall = settle(enterSituation(startView(least), 'capturing', 0, least), 6, 9000)
    const next = enterSituation(enterSituation(tall, 'rolling', 7, least), 'capturing', 20, least)
    expect(next.ceiling).toBe(100)
  })
})

describe('situationOf', () => {
  it('holds the curve after a capture and rolls otherwise', () => {
    expect(benchPhase.options.map(situationOf)).toEqual(['rolling', 'rolling', 'rolling', 'capturing', 'held', 'held'])
  })
})
