import type { Handlers } from '#contract/procedures.ts'
import { type GlueUpFields, glueUpFields } from '#contract/programme/glueUp.ts'
import type { BlockToGlue, GlueUpRecord } from '#contract/programme/glueUpProcedures.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import { nextRunnings } from '#tests/fakes/programme/nextRunnings.ts'

const adhesives = ['casein C1', 'epoxy E4', 'resorcinol R2']
const jointType = 'long grain to long grain'

/** Blocks of a study that are still to be glued: three adhesives, two exposures, three ages and spares. */
function blocksToGlue(): BlockToGlue[] {
  return nextRunnings(1320, 72).map((running, at) => ({
    ...{ blockId: at + 1, number: labelOf(running)!, adhesive: adhesives[at % 3]!, jointType, gapMm: 0 },
    exposure: Math.floor(at / 3) % 2 === 0 ? 'loft' : 'bilge',
    ageMonths: [0, 6, 12, null][Math.floor(at / 6) % 4]!,
    board: `board ${1 + (at % 7)}`,
  }))
}

const fields: GlueUpFields = glueUpFields.parse({
  ...{ gluedOn: '2026-04-20', temperatureC: 18.5, humidityPercent: 62, spreadGPerM2: 180, openTimeMin: 10 },
  ...{ clampTimeMin: 720, pressureMPa: 0.7, woodMoisturePercent: 11.5, people: 'bench 1 and 2' },
  notes: 'Two clamps slipped a little and were tightened again.',
  lots: adhesives.map((adhesive) => ({ adhesive, lot: `${adhesive.split(' ')[1]}-lot-2` })),
})

const glueUp: GlueUpRecord = {
  ...{ glueUpId: 1, recordedAt: '2026-04-20T15:20:00.000Z', by: 'bench 1', studyId: 1, fields },
  ...{ studyTitle: 'Which glue to teach: loft and bilge', blocks: 18, entered: null, corrections: [] },
  specimens: nextRunnings(1200, 18).map((running, at) => ({
    ...{ specimenId: at + 1, number: labelOf(running)!, adhesive: adhesives[at % 3]!, exposure: 'loft' },
    ...{ ageMonths: at % 6 === 5 ? null : 6 * (at % 3), board: `plank ${1 + (at % 6)}` },
    overlapLengthMm: at === 4 ? null : 29.8 + (at % 5) / 10,
    overlapWidthMm: at === 4 ? null : 19.9 + (at % 4) / 20,
    areaMm2: at === 4 ? null : 600,
    place: `loft shelf ${1 + (at % 3)}`,
  })),
}

/** Glue-ups and breaking sessions kept in memory. */
export function scriptedSessions(): Partial<Handlers> {
  const { specimens: _specimens, entered: _entered, corrections: _corrections, ...row } = glueUp
  return {
    'glueUps.list': async () => [
      { ...row, glueUpId: 2, studyId: null, studyTitle: null, blocks: 4, fields: { ...fields, gluedOn: '2026-05-04' } },
      row,
    ],
    'glueUps.get': async () => glueUp,
    'glueUps.studies': async () => [
      { studyId: 1, title: 'Which glue to teach: loft and bilge', startOn: '2026-04-20', toGlue: 72 },
    ],
    'glueUps.plan': async () => ({
      ...{ studyId: 1, title: 'Which glue to teach: loft and bilge', wood: 'beech' },
      ...{ overlapLengthMm: 30, overlapWidthMm: 20, blocks: blocksToGlue() },
    }),
    'glueUps.add': async () => row,
  }
}
