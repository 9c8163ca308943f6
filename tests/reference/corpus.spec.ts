import { describe, expect, it } from 'vitest'
import type { LoadingTruth } from '#acquisition/virtual/loading/loadingTruth.ts'
import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { evaluateCurve } from '#domain/signal/loading/evaluateCurve.ts'
import { type Captured, everyKind, runBench } from './corpus.ts'

/*
 * Seeded curves of every scenario of the physical bench model, through the live detector and again from the stored
 * samples, against what the model knows to be true. The model shares no code with the detector.
 */

/** Rates and how many seeds of each; two loadings a seed, one at the highest rates. */
const runs: readonly [rateHz: number, seeds: number, breaks: number][] = [
  [10, 4, 2],
  [20, 3, 2],
  [80, 4, 2],
  [320, 3, 2],
  [1000, 2, 2],
  [10_000, 1, 1],
]

type Row = { where: string; what: string; found: string; truth: string }

/** Everything in which a capture departs from the truth of its loading. */
function departures(where: string, captured: Captured, truth: LoadingTruth, rateHz: number, peakN: number): Row[] {
  const rows: Row[] = []
  const differ = (what: string, found: unknown, wanted: unknown) =>
    rows.push({ where, what, found: String(found), truth: String(wanted) })
  const { result, firstTimeS } = captured
  const { events, flags } = result
  if (result.outcome !== truth.outcome) {
    differ('outcome', result.outcome, truth.outcome)
    return rows
  }
  // The peak is the highest sample that left the amplifier under load, to the last bit of the arithmetic.
  if (Math.abs(result.peakN! - peakN) > 1e-6) differ('peak', result.peakN, peakN)

  const stepS = 1 / rateHz
  if (truth.outcome === 'break' && !truth.gapAtPeak) {
    const breakS = firstTimeS + result.breakTimeS!
    // Steps of a progressive failure closer together than a sample interval or the drop window belong to its fall; a clipped
    // converter sees the fall only when it comes back into range.
    const early = truth.kind === 'progressive' ? truth.breakTimeS! - truth.peakTimeS : 0
    const late = truth.kind === 'clipping' ? 0.01 : 0
    const off = breakS - truth.breakTimeS!
    if (off < -early - stepS - 0.002 || off > late + stepS + 0.002) differ('break time', breakS, truth.breakTimeS)
    const after = Math.abs(result.afterBreakN! - truth.afterBreakN!)
    if (after > 0.1 * truth.afterBreakN! + 0.01 * truth.peakN + 8)
      differ('after break', result.afterBreakN, truth.afterBreakN)
  }
  // From onset on, the toe of a slow loading stays in the noise for a while.
  const onsetS = firstTimeS + result.onsetTimeS!
  const toe = 0.2 * (truth.peakTimeS - truth.onsetTimeS) + 2 * stepS
  if (onsetS < truth.onsetTimeS - 0.2 - 2 * stepS || onsetS > truth.onsetTimeS + toe)
    differ('onset', onsetS, truth.onsetTimeS)
  // Between the strokes of a pump the slope is not one number, and a clipped peak has none.
  const steady = !['hand-pumped', 'clipping', 'gaps'].includes(truth.kind)
  // Noise alone tilts a line of n samples over 0.8 s with an SD of sqrt(12 / n³) noise SDs a step: on a plateau it is all there is.
  const tiltNPerS = truth.noiseN * rateHz * Math.sqrt(12 / Math.max(5, 0.8 * rateHz) ** 3)
  const rateOffNPerS = Math.abs(result.loadingRateNPerS! - truth.loadingRateNPerS)
  if (steady && truth.outcome === 'break' && rateOffNPerS > 0.25 * truth.loadingRateNPerS + 3 * tiltNPerS)
    differ('loading rate', result.loadingRateNPerS, truth.loadingRateNPerS)

  const glitchTimes = new Set<number>()
  for (const event of events)
    if (event.kind === 'glitch')
      for (const t of [event.startTimeS, event.endTimeS]) {
        const streamS = firstTimeS + t
        if (streamS >= truth.onsetTimeS && streamS <= truth.endTimeS) glitchTimes.add(Math.round(streamS * 1e6))
      }
  const wantedGlitches = truth.glitchTimesS.map((t) => Math.round(t * 1e6)).join(' ')
  const foundGlitches = [...glitchTimes].sort((a, b) => a - b).join(' ')
  // Behind a clipped converter the swing after the break can look like one.
  if (foundGlitches !== wantedGlitches && !truth.clipped) differ('glitches', foundGlitches, wantedGlitches)

  if (result.missingSamples !== truth.droppedSamples) differ('missing', result.missingSamples, truth.droppedSamples)
  const gaps = events.filter(({ kind }) => kind === 'gap').length
  if (gaps !== truth.gaps.length) differ('gaps', gaps, truth.gaps.length)
  if (flags.includes('gap') !== truth.droppedSamples > 0) differ('flag gap', flags, truth.droppedSamples)
  if (flags.includes('gap-at-peak') !== truth.gapAtPeak) differ('flag gap-at-peak', flags, truth.gapAtPeak)
  if (flags.includes('clipped') !== truth.clipped) differ('flag clipped', flags, truth.clipped)
  if (events.some(({ kind }) => kind === 'clipping') !== truth.clipped) differ('clipping', flags, truth.clipped)

  const drops = [...truth.popIns, ...truth.stickSlip.drops]
  // Between two samples the drive makes good part of a drop: what is left must be seen, or may be missed when it is small.
  const visible = drops.filter(
    ({ fromN, dropN }) => dropN - 1.5 * truth.loadingRateNPerS * stepS > 0.05 * fromN + 8,
  ).length
  const popIn = events.filter(({ kind }) => kind === 'pop-in').length
  const found = popIn + events.filter(({ kind }) => kind === 'stick-slip').reduce((sum, { cycles }) => sum + cycles!, 0)
  // The last slip may run straight into the final break.
  if (found < visible - (truth.kind === 'stick-slip' ? 1 : 0) || found > drops.length)
    differ('drops', found, `${visible} to ${drops.length}`)
  if (popIn !== (found === 1 ? 1 : 0)) differ('pop-in', popIn, found)
  const dropping = events.find(({ kind }) => kind === 'pop-in' || kind === 'stick-slip')
  if (dropping !== undefined && found === drops.length)
    for (const [what, is, was, off] of departedDrops(dropping, drops, { firstTimeS, stepS, truth })) {
      if (Math.abs(is - was) > off) differ(what, is, `${was} within ${off}`)
    }

  const peaks = result.course!.peaks
  const standingOut = (share: number) => truth.highs.filter(({ fallN }) => fallN > share * truth.peakN).length
  // The pauses of a pump let go little more than what stands out, and at slow rates their tops lie between samples.
  const fewest = truth.kind === 'hand-pumped' ? 1 : standingOut(0.03)
  if (peaks < fewest || peaks > standingOut(0.005)) differ('peaks', peaks, `${fewest} to ${standingOut(0.005)}`)

  const seating = events.find(({ kind }) => kind === 'seating')
  if (seating !== undefined) {
    const lengthS = truth.seatingEndTimeS - truth.onsetTimeS
    const foundS = firstTimeS + seating.endTimeS - truth.onsetTimeS
    if (foundS < 0.4 * lengthS - stepS || foundS > 1.6 * lengthS + 0.05 * (truth.peakTimeS - truth.onsetTimeS) + stepS)
      differ('seating', foundS, lengthS)
  }

  const stored = evaluateCurve(captured.timeS, captured.force, captured.readings, captured.settings)
  if (JSON.stringify(stored) !== JSON.stringify(result))
    differ('stored evaluation', JSON.stringify(stored), JSON.stringify(result))
  return rows
}

/** How the event of drops that were all found stands to what is true: found, true, and how far it may be off. */
function departedDrops(
  event: CurveEvent,
  drops: readonly { timeS: number; fromN: number; dropN: number }[],
  around: { firstTimeS: number; stepS: number; truth: LoadingTruth },
): [what: string, is: number, was: number, off: number][] {
  const { firstTimeS, stepS, truth } = around
  const first = drops[0]!
  const falls = drops.map(({ dropN }) => dropN)
  const startOffS = stepS + 0.015
  // The load softens on its way to the peak: before, the drive was up to 1 / 0.65 times as fast.
  const drivenN = (truth.loadingRateNPerS / 0.65) * startOffS
  const largest = Math.max(...falls)
  // Where frame and cell still swing, the level after a drop is not known better.
  const dropOffN = drivenN + 0.08 * largest + 6 * truth.noiseN
  const rows: [string, number, number, number][] = [
    ['drops from', firstTimeS + event.startTimeS, first.timeS, startOffS],
    ['load of drop', event.fromN!, first.fromN, drivenN + 6 * truth.noiseN],
    ['share of peak', event.percentOfPeak!, (100 * first.fromN) / truth.peakN, 1.5 + (100 * drivenN) / truth.peakN],
    ['largest drop', event.dropN!, largest, dropOffN],
  ]
  if (event.kind === 'pop-in') return rows
  const periodS = (drops.at(-1)!.timeS - first.timeS) / (drops.length - 1)
  const meanN = falls.reduce((sum, dropN) => sum + dropN, 0) / falls.length
  return [
    ...rows,
    ['period', event.periodS!, periodS, (2 * startOffS) / (drops.length - 1)],
    ['mean drop', event.meanDropN!, meanN, dropOffN],
    ['least drop', event.leastDropN!, Math.min(...falls), dropOffN],
  ]
}

function table(rows: readonly Row[]): string {
  return rows
    .map(({ where, what, found, truth }) => `${where.padEnd(40)} ${what.padEnd(16)} ${found}  truth ${truth}`)
    .join('\n')
}

describe('curves of known truth', () => {
  let curves = 0
  it.each(everyKind)('of %s are read as they were', (scenario) => {
    const rows: Row[] = []
    for (const [rateHz, seeds, breaks] of runs)
      for (let seed = 1; seed <= seeds; seed++) {
        const where = `${scenario} ${rateHz} Hz seed ${seed}`
        // Half of the benches know their capacity, half go by noise alone.
        const settings = { capacityN: seed % 2 === 0 ? null : 25_000 }
        const run = runBench({ scenario, rateHz, seed, breaks, knocksPerHour: 0, keepSamples: true, settings })
        if (run.captures.length !== run.truths.length)
          rows.push({ where, what: 'captures', found: String(run.captures.length), truth: String(run.truths.length) })
        run.truths.forEach((truth, i) => {
          const captured = run.captures[i]
          curves += 1
          if (captured !== undefined)
            rows.push(
              ...departures(
                `${where} no. ${i + 1}`,
                captured,
                truth,
                rateHz,
                run.nOfCounts(truth.highestSampleCounts!),
              ),
            )
        })
      }
    expect(table(rows)).toBe('')
  })

  it('are captured once each and not before their time, with noise up to 1 % of the peak on a slow device', () => {
    const rows: Row[] = []
    for (const capacityN of [25_000, null])
      for (const noiseShare of [2e-4, 3e-3, 1e-2])
        for (const rateHz of [10, 25, 40, 80])
          for (let seed = 1; seed <= 40; seed++) {
            const strengthN = 2500 + ((seed * 1300) % 6500)
            const { captures, truths } = runBench({
              scenario: 'brittle',
              rateHz,
              seed: 104_729 * seed + rateHz,
              breaks: 1,
              noiseN: noiseShare * strengthN,
              knocksPerHour: 0,
              // From under the finger to a while of rest: noise goes on telling of itself.
              restS: [0.2, seed % 4 === 0 ? 40 : 5],
              settings: { capacityN },
              specimen: (drawn) => ({ ...drawn, strengthN, strengthMPa: strengthN / drawn.areaMm2 }),
            })
            const where = `${rateHz} Hz noise ${100 * noiseShare} % capacity ${capacityN} seed ${seed}`
            const [truth] = truths
            const onsets = captures.map(({ firstTimeS, result }) => firstTimeS + (result.onsetTimeS ?? 0))
            if (captures.length !== 1 || onsets[0]! < truth!.onsetTimeS - 2 / rateHz)
              rows.push({ where, what: 'onset', found: onsets.join(' '), truth: String(truth!.onsetTimeS) })
          }
    expect(table(rows)).toBe('')
  })

  it('were at least 200', () => {
    expect(curves).toBeGreaterThanOrEqual(200)
  })
})
