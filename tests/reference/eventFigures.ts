import { type BenchSamples, createBenchModel } from '#acquisition/virtual/benchModel.ts'
import type { LoadingTruth } from '#acquisition/virtual/loading/loadingTruth.ts'
import { type ScenarioName, scenarioName } from '#contract/bench/source.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { type BenchRunOptions, runBench } from './corpus.ts'

/** What the curves of one scenario, rate and noise gave. */
export type EventFigures = {
  scenario: ScenarioName
  rateHz: number
  /** SD of the noise, share of the peak. */
  noiseShare: number
  curves: number
  /** Drops that had to be found, and those of them that were. */
  due: number
  found: number
  /** Curves on which more drops were found than there were. */
  falseCurves: number
  /** Peak against the highest noise-free sample, the worst, in noise SDs. */
  peakErrorSDs: number
  /** Load of a pop-in against the last noise-free sample before it, the worst: in noise SDs, and in percent of it. */
  popInErrorSDs: number
  popInErrorPercent: number
  /** Mean drop and mean period of stick-slip that was found whole, the worst, in percent. */
  meanDropErrorPercent: number
  periodErrorPercent: number
  /** Anything else that is not as it was. */
  faults: string[]
}

/** A drop is due when it exceeds this share of the load that it falls from ... */
const dueShare = 0.05
/** ... and so many noise SDs of single samples. */
const dueNoise = 6
/** The bottom of a drop is looked for over this time, s, and two samples at least. */
const bottomS = 0.05
/** The start of a drop is found to so many intervals or seconds. */
const startIntervals = 2
const startS = 0.03

const seedsPerRow = 100_000

const eventScenarios = scenarioName.options.filter((name) => name !== 'idle' && name !== 'mixed')
const eventRates = [10, 80, 1000, 5000] as const
const eventNoises = [0.0002, 0.003, 0.01] as const

/** All scenarios, rates and noises, with specimens of their own for every scenario and rate. */
export function measureAllEvents(firstSeed: number, count: number): EventFigures[] {
  return eventScenarios.flatMap((scenario, s) =>
    eventRates.flatMap((rateHz, r) => {
      const own = (s * eventRates.length + r) * seedsPerRow
      return measureEvents(
        scenario,
        rateHz,
        eventNoises,
        Array.from({ length: count }, (_, i) => own + firstSeed + i),
      )
    }),
  )
}

type CleanDrop = { timeS: number; fromN: number; dropN: number }
type CleanCurve = { peakN: number; highestN: number; drops: CleanDrop[] }

/** Loads one specimen of a scenario per seed, at each noise, through the live detector, and compares with what is true. */
function measureEvents(
  scenario: ScenarioName,
  rateHz: number,
  noises: readonly number[],
  seeds: readonly number[],
): EventFigures[] {
  const figures = noises.map((noiseShare): EventFigures => {
    const errors = { peakErrorSDs: 0, popInErrorSDs: 0, popInErrorPercent: 0, meanDropErrorPercent: 0 }
    return {
      ...{ scenario, rateHz, noiseShare, curves: 0, due: 0, found: 0, falseCurves: 0 },
      ...{ ...errors, periodErrorPercent: 0, faults: [] },
    }
  })
  for (const seed of seeds) {
    const bench = { scenario, rateHz, seed, breaks: 1, knocksPerHour: 0, humN: 0, driftN: 0 }
    const clean = cleanCurve(bench)
    for (const row of figures) {
      const noiseN = row.noiseShare * clean.peakN
      const run = runBench({ ...bench, noiseN })
      const truth = run.truths[0]!
      const captured = run.captures.find(({ result }) => result.outcome === truth.outcome)
      row.curves += 1
      if (captured === undefined) row.faults.push(`seed ${seed}: no ${truth.outcome} was found`)
      else compare(row, { seed, noiseN, truth, clean }, captured.result, captured.firstTimeS)
    }
  }
  return figures
}

/** The samples that the same loading gives without noise: what of a drop is left in them is the drop that can be seen. */
function cleanCurve(options: BenchRunOptions): CleanCurve {
  const bench = createBenchModel({ ...options, noiseN: 0 })
  const { zeroCounts, nPerCount } = bench.characteristic
  const block: BenchSamples = {
    timeUs: new Float64Array(8192),
    counts: new Float64Array(8192),
    sequence: new Float64Array(8192),
  }
  const timeS: number[] = []
  const forceN: number[] = []
  for (let count = block.counts.length; count === block.counts.length; ) {
    count = bench.fill(block)
    for (let i = 0; i < count; i++) {
      timeS.push(block.timeUs[i]! / 1e6)
      forceN.push((block.counts[i]! - zeroCounts) * nPerCount)
    }
  }
  const truth = bench.truths[0]!
  const drops = [...truth.popIns, ...truth.stickSlip.drops].map((drop): CleanDrop => {
    const after = timeS.findIndex((t) => t >= drop.timeS)
    let lowest = Number.POSITIVE_INFINITY
    for (let k = after; k < after + 2 || timeS[k]! < drop.timeS + bottomS; k++) lowest = Math.min(lowest, forceN[k]!)
    const fromN = forceN[after - 1]!
    // Ringing goes below the level on which the load comes to rest.
    return { timeS: drop.timeS, fromN, dropN: Math.min(drop.dropN, fromN - lowest) }
  })
  return { peakN: truth.peakN, highestN: (truth.highestSampleCounts! - zeroCounts) * nPerCount, drops }
}

type Known = { seed: number; noiseN: number; truth: LoadingTruth; clean: CleanCurve }

function compare(row: EventFigures, known: Known, result: EvaluationResult, firstTimeS: number): void {
  const { seed, noiseN, clean } = known
  const { drops } = clean
  row.peakErrorSDs = Math.max(row.peakErrorSDs, Math.abs(result.peakN! - clean.highestN) / noiseN)
  const due = drops.filter(({ fromN, dropN }) => dropN > dueShare * fromN && dropN > dueNoise * noiseN).length
  const [event, more] = result.events.filter(({ kind }) => kind === 'pop-in' || kind === 'stick-slip')
  if (more !== undefined) row.faults.push(`seed ${seed}: two events of partial drops`)
  const count = event === undefined ? 0 : (event.cycles ?? 1)
  row.due += due
  row.found += Math.min(due, count)
  if (count > drops.length) row.falseCurves += 1
  if (event === undefined || count === 0 || count > drops.length) return

  const within = Math.max(startS, startIntervals / row.rateHz)
  const first = drops.find(({ timeS }) => Math.abs(firstTimeS + event.startTimeS - timeS) <= within)
  if (first === undefined) {
    row.faults.push(`seed ${seed}: a drop at ${firstTimeS + event.startTimeS} s that is none`)
    return
  }
  if (event.kind === 'pop-in' && drops.length === 1) {
    const errorN = Math.abs(event.fromN! - first.fromN)
    row.popInErrorSDs = Math.max(row.popInErrorSDs, errorN / noiseN)
    row.popInErrorPercent = Math.max(row.popInErrorPercent, (100 * errorN) / first.fromN)
  }
  if (count < 2 || count < drops.length) return
  const meanDropN = drops.reduce((sum, { dropN }) => sum + dropN, 0) / drops.length
  const periodS = (drops.at(-1)!.timeS - drops[0]!.timeS) / (drops.length - 1)
  const percentOff = (found: number, truth: number) => 100 * Math.abs(found / truth - 1)
  row.meanDropErrorPercent = Math.max(row.meanDropErrorPercent, percentOff(event.meanDropN!, meanDropN))
  row.periodErrorPercent = Math.max(row.periodErrorPercent, percentOff(event.periodS!, periodS))
}

/** Sums over rows; plain curves are those of the scenarios in which nothing drops and recovers. */
export function eventTotals(rows: readonly EventFigures[]) {
  const sum = (of: readonly EventFigures[], key: 'curves' | 'due' | 'found' | 'falseCurves') =>
    of.reduce((total, row) => total + row[key], 0)
  const plain = rows.filter(({ scenario }) => scenario !== 'pop-in' && scenario !== 'stick-slip')
  return {
    curves: sum(rows, 'curves'),
    due: sum(rows, 'due'),
    found: sum(rows, 'found'),
    falseCurves: sum(rows, 'falseCurves'),
    plainCurves: sum(plain, 'curves'),
    plainFalse: sum(plain, 'falseCurves'),
    peakErrorSDs: Math.max(...rows.map((row) => row.peakErrorSDs)),
  }
}

/** The figures as a table, and what was measured in words above it. */
export function eventTable(rows: readonly EventFigures[]): string {
  const head = [
    'Drops are due that exceed 5 % of the load and 6 noise SDs in the noise-free samples: what the drive makes good between',
    'two samples is not there to be seen. Found: of those. False: curves with more drops found than there were. Errors: the',
    'worst; of the peak against the highest noise-free sample, of a pop-in against the last one before it.',
    '',
    'scenario      rate Hz  noise %  curves    due  found  false  peak SDs  pop-in SDs  pop-in %  mean drop %  period %',
  ]
  const lines = rows.map(
    (row) =>
      row.scenario.padEnd(13) +
      [
        String(row.rateHz).padStart(8),
        (100 * row.noiseShare).toFixed(2).padStart(9),
        String(row.curves).padStart(8),
        String(row.due).padStart(7),
        String(row.found).padStart(7),
        String(row.falseCurves).padStart(7),
        row.peakErrorSDs.toFixed(1).padStart(10),
        row.popInErrorSDs.toFixed(1).padStart(12),
        row.popInErrorPercent.toFixed(2).padStart(10),
        row.meanDropErrorPercent.toFixed(1).padStart(13),
        row.periodErrorPercent.toFixed(2).padStart(10),
      ].join(''),
  )
  return [...head, ...lines].join('\n')
}
