import { type BenchSamples, createBenchModel } from '#acquisition/virtual/benchModel.ts'
import type { LoadingKind } from '#acquisition/virtual/loading/loadingPlan.ts'
import type { LoadingTruth } from '#acquisition/virtual/loading/loadingTruth.ts'
import { type ScenarioName, scenarioName } from '#contract/bench/source.ts'
import { type DetectionSettings, detectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { createBreakDetector } from '#domain/signal/loading/breakDetector.ts'

/** Everything that a specimen of the virtual bench may do under load. */
export const everyKind: readonly LoadingKind[] = scenarioName.options.filter(
  (name) => name !== 'idle' && name !== 'mixed',
)

/** One capture of the live detector with what it was made from; its times are stream times here. */
export type Captured = {
  result: EvaluationResult
  settings: DetectionSettings
  firstTimeS: number
  timeS: Float64Array<ArrayBuffer>
  force: Float64Array<ArrayBuffer>
  readings: Float64Array<ArrayBuffer>
}

export type BenchRun = {
  captures: Captured[]
  truths: readonly LoadingTruth[]
  samples: number
  nOfCounts(counts: number): number
}

export type BenchRunOptions = Parameters<typeof createBenchModel>[0] & {
  scenario: ScenarioName
  settings?: Partial<DetectionSettings>
  /** Keep the samples of each capture; they then go through the detector one by one, else in blocks. */
  keepSamples?: boolean
}

const blockLength = 8192

/** Runs the bench model through the live detector until it is over, tared to the zero of the cell. */
export function runBench(options: BenchRunOptions): BenchRun {
  const bench = createBenchModel(options)
  const { zeroCounts, nPerCount, capacityN } = bench.characteristic
  const nOfCounts = (counts: number) => (counts - zeroCounts) * nPerCount
  const settings = detectionSettings.parse({ capacityN, ...options.settings })
  const block: BenchSamples = {
    timeUs: new Float64Array(blockLength),
    counts: new Float64Array(blockLength),
    sequence: new Float64Array(blockLength),
  }
  const captures: Captured[] = []
  const keep = options.keepSamples ?? false
  // The newest samples, so that the pre-trigger part can be taken from them.
  const kept: { t: number; f: number; r: number }[] = []
  let start: { firstTimeS: number; settings: DetectionSettings; samples: number } | null = null
  let samples = 0
  const detector = createBreakDetector(settings, {
    begin(started) {
      start = started
      if (keep) kept.splice(0, kept.length - started.samples)
    },
    end(result) {
      captures.push({
        result,
        settings: start!.settings,
        firstTimeS: start!.firstTimeS,
        timeS: Float64Array.from(kept, ({ t }) => Math.round((t - start!.firstTimeS) * 1e6) / 1e6),
        force: Float64Array.from(kept, ({ f }) => f),
        readings: Float64Array.from(kept, ({ r }) => r),
      })
      kept.length = 0
      start = null
    },
  })
  for (;;) {
    const count = bench.fill(block)
    samples += count
    const timeS = block.timeUs.map((us) => us / 1e6)
    const force = block.counts.map(nOfCounts)
    if (!keep) for (let i = 0; i < count; ) i = detector.take(timeS, force, block.counts, i, count)
    else
      for (let i = 0; i < count; i++) {
        kept.push({ t: timeS[i]!, f: force[i]!, r: block.counts[i]! })
        if (start === null && kept.length > 400_000) kept.splice(0, 200_000)
        detector.take(timeS, force, block.counts, i, i + 1)
      }
    if (count < blockLength) break
  }
  detector.finish()
  return { captures, truths: bench.truths, samples, nOfCounts }
}
