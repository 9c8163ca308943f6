import type { Handlers } from '#contract/procedures.ts'
import { type OverviewBlock, overviewOf } from '#domain/findings/overview/overviewOf.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { schoolStudy } from './scriptedStudies.ts'

const startMPa: Record<string, number> = { C1: 8.4, E4: 11.5, F6: 7.9, R2: 11.8, U3: 10.1, V5: 9.2 }

/** Every block of the study that the school plans, broken up to two years, drawn up by chance from one seed. */
export function madeOverviewBlocks(blocksPerCell = 12): OverviewBlock[] {
  const random = createRandom(29)
  const blocks: OverviewBlock[] = []
  const { adhesives, exposures, agesMonths } = schoolStudy
  for (const adhesive of adhesives)
    for (const exposure of exposures)
      for (const ageMonths of [...agesMonths, null])
        for (let i = 0; i < blocksPerCell; i++) {
          const id = blocks.length + 1
          const traits = {
            adhesive,
            jointType: 'beech lap',
            bondLineGapMm: 0,
            exposure,
            ageMonths,
            number: String(1000 + id),
          }
          const loss = exposure === 'bilge' ? 0.2 : 0.06
          const mean = (startMPa[adhesive.slice(-2)] ?? 9) * (1 - (loss * (ageMonths ?? 0)) / 24)
          const broken =
            ageMonths !== null && ageMonths <= 24 && !(adhesive.endsWith('V5') && exposure === 'bilge' && ageMonths > 6)
          const state = !broken
            ? random.between(0, 1) > 0.97
              ? 'lost'
              : 'waiting'
            : i === 5 && ageMonths === 6
              ? 'excluded'
              : ageMonths === 0
                ? 'peak-only'
                : 'curve'
          blocks.push({
            ...traits,
            state,
            specimenId: id,
            breakId: state === 'curve' || state === 'excluded' ? id : null,
            strengthMPa: broken ? Math.max(mean + 1.1 * random.normal(), 0.5) : null,
            woodFailurePercent: broken && i !== 7 ? 5 * Math.floor(random.between(0, 21)) : null,
            simulated: true,
          })
        }
  return blocks
}

/** The overview of made blocks, worked out as the program does. */
export function scriptedOverview(): Partial<Handlers> {
  const blocks = madeOverviewBlocks()
  return { 'overview.of': async ({ studyId: _studyId, ...filter }) => overviewOf(blocks, filter) }
}
