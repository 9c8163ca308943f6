import { describe, expect, it } from 'vitest'
import type { LoadingKind } from '#acquisition/virtual/loading/loadingPlan.ts'
import { forceAt } from '#acquisition/virtual/loading/loadSegment.ts'
import { planLoading } from '#acquisition/virtual/loading/planLoading.ts'
import { drawSpecimen } from '#acquisition/virtual/loading/specimen.ts'
import { createRandom } from '#domain/numbers/random.ts'

const kinds: LoadingKind[] = [
  'brittle',
  'progressive',
  'pop-in',
  'stick-slip',
  'hand-pumped',
  'unloading',
  'glitches',
  'plateau',
  'held',
]

function plans(kind: LoadingKind, count: number) {
  return Array.from({ length: count }, (_, seed) => {
    const random = createRandom(seed, 5)
    const specimen = drawSpecimen(random)
    return { specimen, plan: planLoading(kind, specimen, random) }
  })
}

/** Looks at the force on a grid fine enough to see cracks and ringing. */
function walk(plan: ReturnType<typeof planLoading>, visit: (timeS: number, forceN: number) => void) {
  for (const segment of plan.segments) {
    const steps = Math.max(50, Math.min(4000, Math.ceil(segment.durationS / 2e-4)))
    for (let i = 0; i <= steps; i++) {
      const u = (segment.durationS * i) / steps
      visit(segment.startS + u, forceAt(segment, u))
    }
  }
}

describe.each(kinds)('plan of a %s loading', (kind) => {
  it('has the highest force that it states, where it states it', () => {
    for (const { plan } of plans(kind, 40)) {
      let highestN = 0
      let atS = 0
      walk(plan, (timeS, forceN) => {
        if (forceN > highestN) {
          highestN = forceN
          atS = timeS
        }
      })
      expect(highestN).toBeCloseTo(plan.peakN, 5)
      expect(atS).toBeCloseTo(plan.peakTimeS, 5)
    }
  })

  it('never jumps: every stretch starts at the force where the one before it ended', () => {
    for (const { plan } of plans(kind, 40)) {
      let forceN = 0
      for (const segment of plan.segments) {
        expect(segment.durationS).toBeGreaterThan(0)
        expect(forceAt(segment, 0)).toBeCloseTo(forceN, 6)
        forceN = forceAt(segment, segment.durationS)
      }
      expect(Math.abs(forceN)).toBeLessThan(1)
    }
  })
})

describe('plan of a loading', () => {
  it('takes a beech block to failure within the time a press needs', () => {
    for (const { plan, specimen } of plans('brittle', 100)) {
      expect(plan.peakN).toBeCloseTo(specimen.strengthN, 6)
      expect(plan.peakTimeS).toBeCloseTo(specimen.loadingS, 6)
      expect(plan.peakTimeS).toBeGreaterThanOrEqual(5)
      expect(plan.peakTimeS).toBeLessThanOrEqual(60)
    }
  })

  it('falls in a final fracture by more than 40 % of the peak within 50 ms, also when failure was progressive', () => {
    for (const kind of ['brittle', 'progressive', 'stick-slip', 'hand-pumped'] as const)
      for (const { plan } of plans(kind, 40)) {
        const fracture = plan.segments.find((segment) => segment.startS === plan.breakTimeS)!
        expect(forceAt(fracture, 0) - forceAt(fracture, 0.05)).toBeGreaterThan(0.4 * plan.peakN)
      }
  })

  it('never falls by 40 % of the peak within a quarter of a second when it is an unloading', () => {
    for (const { plan } of plans('unloading', 40)) {
      expect(plan.breakTimeS).toBeNull()
      const seen: [number, number][] = []
      walk(plan, (timeS, forceN) => seen.push([timeS, forceN]))
      let from = 0
      let deepestN = 0
      for (const [timeS, forceN] of seen) {
        while (seen[from]![0] < timeS - 0.25) from += 1
        deepestN = Math.max(deepestN, seen[from]![1] - forceN)
      }
      expect(deepestN).toBeLessThan(0.4 * plan.peakN)
    }
  })

  it('recovers from a pop-in to a higher load', () => {
    for (const { plan } of plans('pop-in', 40)) {
      const [popIn] = plan.popIns
      expect(popIn!.fromN).toBeLessThan(plan.peakN)
      expect(popIn!.timeS).toBeLessThan(plan.peakTimeS)
      let lowestN = popIn!.fromN
      walk(plan, (timeS, forceN) => {
        if (timeS > popIn!.timeS && timeS < plan.peakTimeS) lowestN = Math.min(lowestN, forceN)
      })
      // Ringing may swing it a little below the stated drop, the drive going on keeps it a little above.
      expect(popIn!.fromN - lowestN).toBeGreaterThan(0.9 * popIn!.dropN)
      expect(popIn!.fromN - lowestN).toBeLessThan(1.2 * popIn!.dropN)
    }
  })

  it('slips at least three times before it fails when it is stick-slip', () => {
    for (const { plan } of plans('stick-slip', 40)) {
      expect(plan.stickSlip.cycles).toBeGreaterThanOrEqual(3)
      expect(plan.stickSlip.drops).toHaveLength(plan.stickSlip.cycles)
      for (const drop of plan.stickSlip.drops) expect(drop.timeS).toBeLessThan(plan.breakTimeS!)
    }
  })

  it('stands still or is let down once, and is then driven on, when it is held', () => {
    let reloads = 0
    for (const { plan } of plans('held', 60)) {
      expect(plan.holds.length + plan.reloads.length).toBe(1)
      expect(plan.highs).toHaveLength(2)
      expect(plan.highs[1]!.forceN).toBeCloseTo(plan.peakN, 6)
      for (const { timeS, endTimeS, fromN, relaxedN } of plan.holds) {
        expect(endTimeS - timeS).toBeGreaterThanOrEqual(2.5)
        expect(relaxedN).toBeLessThan(0.041 * fromN)
        walk(plan, (at, forceN) => {
          if (at >= timeS && at <= endTimeS) expect(forceN).toBeLessThanOrEqual(fromN + 1e-6)
        })
      }
      for (const { timeS, lowestTimeS, fromN, lowestN } of plan.reloads) {
        reloads += 1
        let deepestN = fromN
        walk(plan, (at, forceN) => {
          if (at >= timeS && at < plan.peakTimeS) deepestN = Math.min(deepestN, forceN)
        })
        expect(lowestN).toBeCloseTo(deepestN, 6)
        expect(lowestTimeS).toBeGreaterThan(timeS)
        expect(lowestN).toBeLessThan(0.75 * fromN)
      }
    }
    expect(reloads).toBeGreaterThan(10)
  })

  it('no longer rises to speak of for two seconds at least before it fails from a plateau', () => {
    for (const { plan } of plans('plateau', 40)) {
      const { timeS, endTimeS } = plan.plateau!
      expect(endTimeS - timeS).toBeGreaterThanOrEqual(2)
      expect(endTimeS).toBe(plan.breakTimeS)
      walk(plan, (at, forceN) => {
        if (at >= timeS && at <= endTimeS) expect(forceN).toBeGreaterThanOrEqual(0.984 * plan.peakN)
      })
      expect(plan.loadingRateNPerS).toBeLessThan(0.15 * plan.meanRateNPerS)
    }
  })

  it('states the slope between the first 10 % and the first 90 % of the peak', () => {
    for (const kind of kinds)
      for (const { plan } of plans(kind, 10)) {
        let reached10S = Number.NaN
        let reached90S = Number.NaN
        walk(plan, (timeS, forceN) => {
          if (Number.isNaN(reached10S) && forceN >= 0.1 * plan.peakN) reached10S = timeS
          if (Number.isNaN(reached90S) && forceN >= 0.9 * plan.peakN) reached90S = timeS
        })
        // The grid of this walk is up to 15 ms wide.
        expect((plan.meanRateNPerS * (reached90S - reached10S)) / (0.8 * plan.peakN)).toBeCloseTo(1, 2)
      }
  })

  it('falls all at once, or in as many steps as it states', () => {
    for (const { plan } of plans('progressive', 40)) {
      const drop = plan.finalDrop!
      expect(drop.manner).toBe('progressive')
      expect(drop.steps).toBeGreaterThanOrEqual(2)
      expect(drop.timeS).toBeCloseTo(plan.peakTimeS, 9)
      expect(drop.timeS + drop.lengthS).toBeGreaterThan(plan.breakTimeS!)
    }
    for (const { plan, specimen } of plans('brittle', 40)) {
      const drop = plan.finalDrop!
      expect(drop).toMatchObject({ manner: 'brittle', steps: 0, timeS: plan.breakTimeS })
      const fracture = plan.segments.find((segment) => segment.startS === plan.breakTimeS)!
      const swing = 1.2 * specimen.ringShare
      const left = (forceAt(fracture, drop.lengthS) - plan.afterBreakN!) / (plan.peakN - plan.afterBreakN!)
      expect(Math.abs(left - 0.1)).toBeLessThan(swing)
    }
    for (const { plan } of plans('unloading', 5)) expect(plan.finalDrop).toBeNull()
  })
})
