import { describe, expect, it } from 'vitest'
import type { LoadingKind } from '#acquisition/virtual/loading/loadingPlan.ts'
import { everyKind } from './corpus.ts'
import { eventsOf, type ReadCurve, readCorpus } from './courseCorpus.ts'

/*
 * What is read of the course of a loading, against what the bench model knows to be true: every kind, from 10 Hz to 5 kHz, noise
 * from next to nothing to one percent of the peak. The model shares no code with what reads the curves.
 */

const noiseShares = [1e-4, 2e-3, 1e-2]
/** Neither held, nor let down, nor giving way. */
const plainKinds = everyKind.filter((kind) => kind !== 'plateau' && kind !== 'held')
const slowRates = [10, 25, 80, 320, 1000]

const read = (kinds: readonly LoadingKind[], seeds: number): ReadCurve[] => [
  ...readCorpus(kinds, slowRates, noiseShares, seeds),
  ...readCorpus(kinds, [5000], [1e-4, 1e-2], 1),
]

/** Where curves depart from the truth, one line each, in no more than a share of them; else all lines. */
function departures(curves: readonly ReadCurve[], share: number, differs: (curve: ReadCurve) => string | null): string {
  const lines = curves.flatMap((curve) => {
    const found = differs(curve)
    return found === null ? [] : [`${curve.where}: ${found}`]
  })
  return lines.length <= share * curves.length ? '' : lines.join('\n')
}

const countDiffers =
  (kind: 'hold' | 'reload' | 'plateau', truly: (curve: ReadCurve) => number) => (curve: ReadCurve) => {
    const found = eventsOf(curve, kind).length
    return found === truly(curve) ? null : `${found} times ${kind}, truth ${truly(curve)}`
  }

describe('the course of curves of known truth', () => {
  const plain = read(plainKinds, 2)
  const plateaus = read(['plateau'], 5)
  const held = read(['held'], 9)
  const all = [...plain, ...plateaus, ...held]

  it('is read from 500 curves at least', () => {
    expect(all.length).toBeGreaterThanOrEqual(500)
    expect(held.filter(({ truth }) => truth.holds.length === 1).length).toBeGreaterThanOrEqual(50)
    expect(held.filter(({ truth }) => truth.reloads.length === 1).length).toBeGreaterThanOrEqual(25)
    expect(departures(all, 0, ({ truth, result }) => (truth.outcome === result.outcome ? null : result.outcome))).toBe(
      '',
    )
  })

  it('has no hold, let-down or plateau where there was none, in 99 % of the plain ones', () => {
    for (const kind of ['hold', 'reload', 'plateau'] as const)
      expect(
        departures(
          plain,
          0.01,
          countDiffers(kind, () => 0),
        ),
      ).toBe('')
  })

  it('has the seating wherever it is long and the noise small, and hardly ever on a pumped load, which has none', () => {
    // Noise hides the start of a toe, and what is left of it may be too short to tell.
    const missed = (curve: ReadCurve) => {
      const { truth, noiseShare } = curve
      const unevenS = [...truth.popIns, ...truth.stickSlip.drops, ...truth.holds, ...truth.reloads].map(
        ({ timeS }) => timeS,
      )
      const evenS = Math.min(truth.peakTimeS, ...unevenS) - truth.onsetTimeS
      const share = (truth.seatingEndTimeS - truth.onsetTimeS) / evenS
      return noiseShare > 1e-4 || share < 0.08 || eventsOf(curve, 'seating').length === 1
        ? null
        : `no seating, truth ${share} of the time`
    }
    const seated = all.filter(({ kind }) => kind !== 'hand-pumped')
    expect(departures(seated, 0, missed)).toBe('')
    const pumped = read(['hand-pumped'], 6)
    expect(
      departures(pumped, 0.08, (curve) => (eventsOf(curve, 'seating').length === 0 ? null : 'seating where none was')),
    ).toBe('')
  })

  it('has the plateau before the failure, its start within 1.5 s, in 98 %', () => {
    expect(
      departures(
        plateaus,
        0.02,
        countDiffers('plateau', () => 1),
      ),
    ).toBe('')
    expect(
      departures(
        plateaus,
        0.02,
        countDiffers('hold', () => 0),
      ),
    ).toBe('')
    const late = (curve: ReadCurve) => {
      const [event] = eventsOf(curve, 'plateau')
      const off = (event?.startTimeS ?? 0) + curve.firstTimeS - curve.truth.plateau!.timeS
      return event === undefined || Math.abs(off) < 1.5 ? null : `starts ${off} s late`
    }
    expect(departures(plateaus, 0, late)).toBe('')
  })

  it('has the hold or the let-down, when it was and how far it went, in 98 %', () => {
    expect(
      departures(
        held,
        0.02,
        countDiffers('hold', ({ truth }) => truth.holds.length),
      ),
    ).toBe('')
    expect(
      departures(
        held,
        0.02,
        countDiffers('reload', ({ truth }) => truth.reloads.length),
      ),
    ).toBe('')
    const misplaced = (curve: ReadCurve) => {
      const [truly] = [...curve.truth.holds, ...curve.truth.reloads]
      const [event] = [...eventsOf(curve, 'hold'), ...eventsOf(curve, 'reload')]
      const off = (event?.startTimeS ?? 0) + curve.firstTimeS - truly!.timeS
      return event === undefined || Math.abs(off) < 1 ? null : `starts ${off} s late`
    }
    expect(departures(held, 0, misplaced)).toBe('')
    const deep = (curve: ReadCurve) => {
      const [truly] = curve.truth.reloads
      const [event] = eventsOf(curve, 'reload')
      if (truly === undefined || event === undefined) return null
      const ratio = event.dropN! / (truly.fromN - truly.lowestN)
      return Math.abs(ratio - 1) < 0.15 ? null : `let down by ${ratio} of the truth`
    }
    expect(departures(held, 0, deep)).toBe('')
  })

  it('tells a brittle failure from a progressive one wherever it says, and says so from 60 Hz on', () => {
    const wrong = (curve: ReadCurve) => {
      const { finalDrop, gapAtPeak } = curve.truth
      const drops = eventsOf(curve, 'final-drop')
      if (finalDrop === null) return drops.length === 0 ? null : 'a final drop, truth none'
      const manner = drops[0]?.manner
      if (drops.length !== 1) return `${drops.length} final drops`
      if (manner === null) return curve.rateHz < 60 || gapAtPeak ? null : 'not told'
      return manner === finalDrop.manner ? null : `${manner}, truth ${finalDrop.manner}`
    }
    expect(departures(all, 0, wrong)).toBe('')
  })

  it('has the load before the final drop and what is left of it', () => {
    const off = (curve: ReadCurve) => {
      const [drop] = eventsOf(curve, 'final-drop')
      const { truth } = curve
      if (drop === undefined || truth.gapAtPeak || truth.clipped) return null
      const fromN = truth.highs.at(-1)!.forceN
      const missedN = truth.loadingRateNPerS / curve.rateHz
      return Math.abs(drop.fromN! - fromN) < missedN + 5 * truth.noiseN + 0.01 * truth.peakN
        ? null
        : `from ${drop.fromN} N, truth ${fromN} N`
    }
    expect(departures(all, 0, off)).toBe('')
  })

  it('has the mean rate within 5 % in 99 %, where the load goes up once', () => {
    const off = ({ kind, truth, result }: ReadCurve) => {
      // A clipped peak is no peak, and where a slipping load first stands at 90 % of it is a matter of noise.
      if (kind === 'clipping' || kind === 'stick-slip' || kind === 'unloading') return null
      const ratio = result.course!.meanRateNPerS! / truth.meanRateNPerS
      return Math.abs(ratio - 1) < 0.05 ? null : `${ratio} of the truth`
    }
    expect(departures(all, 0.01, off)).toBe('')
  })

  it('has the time to failure within a tenth and the toe that noise hides, in 98 %', () => {
    const off = ({ truth, result, rateHz }: ReadCurve) => {
      const { timeToFailureS } = result.course!
      if (truth.breakTimeS === null) return timeToFailureS === null ? null : 'a failure, truth none'
      const trulyS = truth.breakTimeS - truth.onsetTimeS
      const hiddenS = 0.11 * trulyS
      const off = timeToFailureS! - trulyS
      // The fall of a progressive failure may be seen from its first step.
      const stepsS = truth.finalDrop!.lengthS
      return off < 0.2 + 2 / rateHz && off > -hiddenS - stepsS - 2 / rateHz
        ? null
        : `${timeToFailureS} s, truth ${trulyS} s`
    }
    expect(departures(all, 0.02, off)).toBe('')
  })
})
