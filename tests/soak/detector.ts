import { type BenchRunOptions, everyKind, runBench } from '#tests/reference/corpus.ts'

/** What idle hours gave: captures of any kind are noise in the list, a phantom break is a wrong result. */
export type IdleFigures = {
  hours: number
  samples: number
  phantomBreaks: number
  phantomUnloadings: number
  otherCaptures: number
}

/** What simulated loadings gave. */
export type BreakFigures = {
  loadings: number
  missed: number
  invented: number
  wrongOutcomes: number
  wrongPeaks: number
  examples: string[]
}

/** A bench at rest: noise, hum, drift, glitches and many knocks for so many hours, through the live detector. */
export function soakIdle(hours: number, bench: Omit<BenchRunOptions, 'scenario'>): IdleFigures {
  const run = runBench({ scenario: 'idle', knocksPerHour: 120, ...bench, endS: hours * 3600 })
  const count = (outcome: string) => run.captures.filter(({ result }) => result.outcome === outcome).length
  return {
    hours,
    samples: run.samples,
    phantomBreaks: count('break'),
    phantomUnloadings: count('unloading'),
    otherCaptures: count('none'),
  }
}

/** Loads specimens of every kind at many rates, knocks and all, and compares each capture with the truth of the model. */
export function soakBreaks(loadings: number, rates: readonly number[], firstSeed: number): BreakFigures {
  const figures: BreakFigures = { loadings: 0, missed: 0, invented: 0, wrongOutcomes: 0, wrongPeaks: 0, examples: [] }
  const perRun = 5
  for (let run = 0; figures.loadings < loadings; run++) {
    const scenario = everyKind[run % everyKind.length]!
    const rateHz = rates[Math.floor(run / everyKind.length) % rates.length]!
    const seed = firstSeed + run
    const { captures, truths, nOfCounts } = runBench({ scenario, rateHz, seed, breaks: perRun, restS: [3, 8] })
    const where = `${scenario} ${rateHz} Hz seed ${seed}`
    const used = new Set<number>()
    for (const truth of truths) {
      figures.loadings += 1
      const at = captures.findIndex(
        ({ result, firstTimeS }, i) =>
          !used.has(i) &&
          result.peakTimeS !== null &&
          firstTimeS + result.peakTimeS >= truth.onsetTimeS &&
          firstTimeS + result.peakTimeS <= truth.endTimeS,
      )
      if (at < 0) {
        figures.missed += 1
        figures.examples.push(`${where} loading ${truth.number}: missed`)
        continue
      }
      used.add(at)
      const { result } = captures[at]!
      const peakN = nOfCounts(truth.highestSampleCounts!)
      // A knock on top of the load can look like a glitch; then the load itself must be the peak.
      const highestS = truth.highestSampleTimeS! - captures[at]!.firstTimeS
      const knocked = result.events.some(
        (event) => event.kind === 'glitch' && event.startTimeS - 1e-6 <= highestS && highestS <= event.endTimeS + 1e-6,
      )
      const lowestN = knocked ? Math.min(peakN, truth.peakN) - 8 * truth.noiseN : peakN - 1e-6
      if (result.outcome !== truth.outcome) {
        figures.wrongOutcomes += 1
        figures.examples.push(`${where} loading ${truth.number}: ${result.outcome} instead of ${truth.outcome}`)
      } else if (result.peakN! < lowestN || result.peakN! > peakN + 1e-6) {
        figures.wrongPeaks += 1
        figures.examples.push(`${where} loading ${truth.number}: peak ${result.peakN} instead of ${peakN}`)
      }
    }
    captures.forEach((captured, i) => {
      if (used.has(i) || captured.result.outcome === 'none') return
      figures.invented += 1
      figures.examples.push(`${where}: an invented ${captured.result.outcome} at ${captured.firstTimeS} s`)
    })
  }
  return figures
}

function option(words: readonly string[], name: string, otherwise: number): number {
  const at = words.indexOf(`--${name}`)
  if (at < 0) return otherwise
  const value = Number(words[at + 1])
  if (!(value > 0)) throw new Error(`--${name} needs a number above 0`)
  return value
}

/** `npm run soak -- detector --hours 24 --breaks 10000`: prints its figures, false when one is not as it must be. */
export async function soak(words: readonly string[]): Promise<boolean> {
  const hours = option(words, 'hours', 24)
  const breaks = option(words, 'breaks', 10_000)
  const seed = option(words, 'seed', 1)
  let held = true
  const benches: [string, Omit<BenchRunOptions, 'scenario'>][] = [
    ['10 Hz', { rateHz: 10, seed }],
    ['80 Hz', { rateHz: 80, seed: seed + 1 }],
    ['80 Hz, capacity unknown', { rateHz: 80, seed: seed + 2, settings: { capacityN: null } }],
    ['1000 Hz', { rateHz: 1000, seed: seed + 3 }],
  ]
  for (const [label, bench] of benches) {
    const startedAt = performance.now()
    const figures = soakIdle(hours, bench)
    held &&= figures.phantomBreaks === 0
    console.log(
      `idle ${hours} h at ${label}: ${figures.samples} samples, ${figures.phantomBreaks} phantom breaks, ` +
        `${figures.phantomUnloadings} unloadings, ${figures.otherCaptures} captures of nothing; ${seconds(startedAt)}`,
    )
  }
  const startedAt = performance.now()
  const figures = soakBreaks(breaks, [10, 20, 80, 320, 1000], seed)
  held &&= figures.missed + figures.invented + figures.wrongOutcomes + figures.wrongPeaks === 0
  console.log(
    `${figures.loadings} loadings: ${figures.missed} missed, ${figures.invented} invented, ` +
      `${figures.wrongOutcomes} with a wrong outcome, ${figures.wrongPeaks} with a wrong peak; ${seconds(startedAt)}`,
  )
  for (const example of figures.examples.slice(0, 40)) console.log(`  ${example}`)
  return held
}

const seconds = (startedAt: number) => `${((performance.now() - startedAt) / 1000).toFixed(1)} s`
