import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { FindingKind } from '#contract/findings/lines.ts'
import { findingsOptions } from '#contract/findings/options.ts'
import { comparisonKinds } from '#domain/findings/lines/comparisonLines.ts'
import { findingLines } from '#domain/findings/lines/findingLines.ts'
import type { Observation } from '#domain/findings/observation.ts'
import { rankIntervals } from '#domain/findings/rankIntervals.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { type Benchmark, computing, type Measurement, medianMsOfEach } from './measurement.ts'

const groupCount = 60
const conditionCount = 5
const blocksEach = 12
const specimenCount = 100_000
const draws = 10_000
const repeats = 5

/** How long the statistics of a large programme take, beside R, which does the same work where it is installed. */
export const findingsBenchmark: Benchmark = async () => {
  // Conditions are compared each by itself, as ages are.
  const conditions = studyOf(groupCount, conditionCount, blocksEach)
  const specimens = studyOf(Math.ceil(specimenCount / blocksEach), 1, blocksEach).slice(0, specimenCount)
  const first = conditions.filter(({ ageMonths }) => ageMonths === 0)
  const groups = [...Map.groupBy(first, ({ group }) => group).values()].map((blocks) => strengthsOf(blocks))
  const ms = await medianMsOfEach(
    repeats,
    {
      comparisons: () => count(conditions, comparisonKinds),
      summaries: () => count(specimens, ['group-summary']),
      ranks: () => rankIntervals(groups, { confidence: 0.95, draws, seed: 1 }),
    },
    { ...computing, warmUps: 1 },
  )
  const ofR = rSeconds(conditions, specimens)
  const line = (part: keyof typeof ms, what: string, mostMs: number): Measurement => ({
    what,
    value: ms[part],
    unit: 'ms',
    baseline: ofR === null ? null : { name: 'R', value: 1000 * ofR[part], times: (1000 * ofR[part]) / ms[part] },
    target: { text: `under ${mostMs}`, met: ms[part] < mostMs },
  })
  return [
    line(
      'comparisons',
      `all comparisons of ${groupCount} groups x ${conditionCount} conditions x ${blocksEach} blocks`,
      2000,
    ),
    line(
      'summaries',
      `summaries of ${specimenCount.toLocaleString('en-GB')} specimens in groups of ${blocksEach}`,
      1000,
    ),
    line('ranks', `${draws.toLocaleString('en-GB')} bootstrap draws of ${groupCount} groups`, 2000),
  ]
}

const strengthsOf = (blocks: readonly Observation[]) => blocks.map(({ strengthMPa }) => strengthMPa)

/** Invented strengths; the condition stands where an age does. */
function studyOf(groups: number, conditions: number, blocks: number): Observation[] {
  const random = createRandom(60)
  return Array.from({ length: groups }, (_, g) => {
    const mean = 10 + random.normal()
    return Array.from({ length: conditions * blocks }, (_block, i) => ({
      group: `adhesive ${g}`,
      ageMonths: 12 * Math.floor(i / blocks),
      specimen: `${g}-${i}`,
      strengthMPa: Math.max(mean + 1.2 * random.normal(), 0.1),
      woodFailurePercent: 5 * random.wholeBetween(0, 20),
      board: null,
      excludedBecause: null,
      simulated: false,
    }))
  }).flat()
}

function count(observations: readonly Observation[], only: readonly FindingKind[]): number {
  const options = findingsOptions.parse({ only, reference: 'adhesive 0', marginPercent: 10 })
  let lines = 0
  for (const _ of findingLines(observations, options)) lines += 1
  return lines
}

/** Seconds of processor that R needs for each part, two minutes in all; null where it is not installed. */
function rSeconds(conditions: readonly Observation[], specimens: readonly Observation[]) {
  const script = fileURLToPath(new URL('./findings.R', import.meta.url))
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-bench-'))
  try {
    const files = [conditions, specimens].map((blocks, i) => {
      const file = join(folder, `${i}.csv`)
      const rows = blocks.map(({ group, ageMonths, strengthMPa }) => `${ageMonths},${group},${strengthMPa}`)
      writeFileSync(file, `condition,group,strength\n${rows.join('\n')}\n`)
      return file
    })
    const text = execFileSync('Rscript', [script, ...files], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] })
    return JSON.parse(text) as Record<'comparisons' | 'summaries' | 'ranks', number>
  } catch {
    return null
  } finally {
    rmSync(folder, { recursive: true })
  }
}
