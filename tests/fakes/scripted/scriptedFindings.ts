import type { Handlers } from '#contract/procedures.ts'
import type { AgeingPart } from '#domain/findings/ageing/ageingParts.ts'
import { rememberLines } from '#domain/findings/lines/rememberedLines.ts'
import type { NextPart } from '#domain/findings/next/nextParts.ts'
import type { ObservedBreak } from '#domain/findings/observedBreak.ts'
import { createRandom } from '#domain/numbers/random.ts'
import type { SeriesCount } from '#domain/programme/stock/studyStock.ts'
import { answerAgeing } from '#engine/findings/answerAgeing.ts'
import { answerFindings } from '#engine/findings/answerFindings.ts'
import { answerNext } from '#engine/findings/answerNext.ts'
import { plannedStudy } from './plannedStudies.ts'

const adhesives = [
  { adhesive: 'casein C1', startMPa: 9.4, percentPerYear: -12 },
  { adhesive: 'resorcinol R2', startMPa: 11.8, percentPerYear: 0 },
  { adhesive: 'one-part polyurethane U3', startMPa: 10.1, percentPerYear: -3 },
  { adhesive: 'epoxy E4', startMPa: 11.5, percentPerYear: -1 },
]

/** Results of four adhesives in loft and bilge over two years, drawn up by chance from one seed. */
export function observed(): ObservedBreak[] {
  const random = createRandom(11)
  const breaks: ObservedBreak[] = []
  for (const { adhesive, startMPa, percentPerYear } of adhesives)
    for (const [exposure, worse] of [
      ['loft', 1],
      ['bilge', 2.5],
    ] as const)
      for (const months of [0, 6, 12, 24])
        for (let i = 0; i < 8; i++) {
          const id = breaks.length + 1
          const mean = startMPa * (1 + (worse * percentPerYear * months) / 1200)
          breaks.push({
            ...{ specimenId: id, breakId: id, number: `${adhesive.split(' ').at(-1)}-${id}`, adhesive, exposure },
            startedAt: new Date(Date.UTC(2026, 3 + months, 21)).toISOString(),
            ...{ jointType: 'long grain to long grain', bondLineGapMm: 0, gluedOn: '2026-04-20', areaMm2: 600 },
            peakN: Math.max(600 * (mean + 1.1 * random.normal()), 300),
            ...{ strengthMPa: null, ageMonths: null, studyId: 1, pullAgeMonths: null, board: null },
            woodFailurePercent: 5 * Math.floor(random.between(0, 1) * random.between(0, 21)),
            ...{ setAside: i === 7 && months === 6 ? 'slipped in the fixture' : null, simulated: true },
          })
        }
  return breaks
}

const exposures = ['loft', 'bilge']
const agesMonths = [0, 6, 12, 24, 36, 60, 120, 180, 240, 360]
/** What is left on the shelf: the pulls of two years are made, twelve blocks wait for each of the others, and three are spare. */
const shelf: SeriesCount[] = adhesives.flatMap(({ adhesive }) =>
  exposures.flatMap((exposure) => {
    const series = { adhesive, jointType: 'long grain to long grain', gapMm: 0, exposure, gluedOn: '2026-04-20' }
    const spares = { ...series, ageMonths: null, planned: 3, waiting: 3, broken: 0, lost: 0 }
    const pulls = agesMonths.map((ageMonths) => {
      const [broken, waiting] = ageMonths <= 24 ? [8, 0] : [0, 12]
      return { ...series, ageMonths, planned: broken + waiting, waiting, broken, lost: 0 }
    })
    return [...pulls, spares]
  }),
)
/** The plan behind them: pulls to thirty years. */
const plan = plannedStudy(
  {
    ...{ adhesives: adhesives.map(({ adhesive }) => adhesive), exposures, agesMonths },
    ...{ referenceAdhesive: 'resorcinol R2', cvPercent: 10 },
  },
  { counts: shelf },
)

/** Findings about made results, worked out as the program does. */
export function scriptedFindings(): Partial<Handlers> {
  const memory = rememberLines()
  const breaks = observed()
  const ageingMemory = rememberLines<AgeingPart>()
  const nextMemory = rememberLines<NextPart>()
  const archive = { observations: () => breaks, pullSources: () => ({ rows: [plan] }), seriesCounts: () => shelf }
  return {
    'findings.of': async (question) => answerFindings({ observations: () => breaks }, question, memory, () => {}),
    'findings.next': async (question) => answerNext(archive, question, nextMemory, () => {}, '2028-05-02'),
    'findings.ageing': async (question) => answerAgeing(archive, question, ageingMemory, () => {}),
  }
}
