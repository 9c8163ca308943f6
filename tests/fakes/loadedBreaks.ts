import { straightCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import { beginSession } from '#archive/bench/sessions.ts'
import { appendSamples, beginBreak, finishBreak } from '#archive/breaks/breaks.ts'
import { openHere } from '#archive/openHere.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import type { ScenarioName } from '#contract/bench/source.ts'
import type { BreakHeader } from '#contract/breaks/capture.ts'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { specimenFields } from '#contract/specimens/specimen.ts'
import { evaluateRawCurve } from '#domain/signal/loading/evaluateRawCurve.ts'
import { storedEvaluation } from '#domain/signal/loading/storedEvaluation.ts'
import { type BenchRunOptions, runBench } from '#tests/reference/corpus.ts'

/** A curve of the virtual press with what the program found when it was captured. */
export type LoadedCurve = {
  samples: SampleBlock
  header: Omit<BreakHeader, 'breakId' | 'sessionId' | 'specimenId' | 'startedAt'>
  result: EvaluationResult
}

const { nPerCount, zeroCounts } = straightCharacteristic
const scale = { kind: 'uncalibrated-scale', nPerCount } as const

/** Captures of the virtual press, tared to the zero of its cell, each evaluated as it is when it is stored. */
export function loadedCurves(options: BenchRunOptions): LoadedCurve[] {
  return runBench({ ...options, keepSamples: true }).captures.map(({ timeS, readings, settings }) => {
    const tare = { offset: zeroCounts * nPerCount, sd: 0, readings: 80, takenAt: '2031-05-02T09:00:00.000Z' }
    const header = { readingUnit: 'counts', scale, tare, settings } as const
    const result = evaluateRawCurve({ timeS, readings }, header)
    return { samples: { timeUs: timeS.map((s) => Math.round(s * 1e6)), readings }, header, result }
  })
}

/** Curves of several scenarios at one rate. */
export function mixedCurves(rateHz: number, perScenario: number, seed: number): LoadedCurve[] {
  const scenarios: ScenarioName[] = ['brittle', 'progressive', 'pop-in', 'stick-slip', 'hand-pumped', 'unloading']
  return scenarios.flatMap((scenario, i) =>
    loadedCurves({ scenario, rateHz, seed: seed + i, breaks: perScenario, restS: [2, 4], knocksPerHour: 0 }),
  )
}

/**
 * Fills an archive that nobody has open with so many breaks, each of a specimen of its own: what `pick` chooses for each.
 * Many to a transaction, since this is no capture.
 */
export function fillWithBreaks(path: string, breaks: number, pick: (index: number) => LoadedCurve): void {
  const startMs = Date.UTC(2031, 4, 2, 9)
  const instant = (index: number) => new Date(startMs + index * 60_000).toISOString()
  const archive = openHere({ path, mode: 'write', program: 'test', instant: instant(0) })
  const { database } = archive
  const perTransaction = 250
  const facts = { source: 'virtual amplifier: mixed', lineFormat: 'checked', program: 'test' }
  const { sessionId } = beginSession(database, { ...facts, startedAt: instant(0) })
  for (let from = 0; from < breaks; from += perTransaction)
    database.transaction(() => {
      const indices = Array.from({ length: Math.min(perTransaction, breaks - from) }, (_, i) => from + i)
      const fields = indices.map((i) =>
        specimenFields.parse({ number: `A-${i + 1}`, adhesive: 'casein C1', areaMm2: 600, demo: true }),
      )
      const specimens = addSpecimens(database, fields, instant(from), 'test')
      for (const [at, index] of indices.entries()) {
        const { samples, header, result } = pick(index)
        const { specimenId } = specimens[at]!
        const begun = beginBreak(database, { ...header, sessionId, specimenId, startedAt: instant(index) })
        appendSamples(database, begun.breakId, samples)
        const evaluation = storedEvaluation(begun, result, 'complete', instant(index), null)
        finishBreak(database, begun.breakId, instant(index), 'complete', result.missingSamples, evaluation)
      }
    })()
  archive.close()
}
