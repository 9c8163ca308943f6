import { join } from 'node:path'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { listQuery } from '#contract/listQuery.ts'
import { glueUpFields } from '#contract/programme/glueUp.ts'
import { newGluedBlock } from '#contract/programme/glueUpProcedures.ts'
import { studyFields } from '#contract/programme/study.ts'
import { dialReading } from '#contract/specimens/typedResult.ts'
import { plusDays } from '#domain/programme/calendar/calendarDay.ts'
import { createLongTasks } from '#engine/core/longTask.ts'
import { pullHandlers } from '#engine/programme/pullHandlers.ts'
import { type Measurement, medianMs } from './measurement.ts'

const instant = '2036-05-02T09:30:00.000Z'
const studies = 200
/** Two exposures, five adhesives, five ages, ten blocks a cell. */
const blocksPerStudy = 500
const readingsAtOnce = 1000
const mostMs = 100
const mostOpeningMs = 1000

const adhesives = ['casein C1', 'resorcinol R2', 'polyurethane U3', 'epoxy E4', 'cross-linking PVA V5']

/** How fast lists, due pulls and pages of studies are that hold 100,000 specimens of 200 studies, two pulls of each broken. */
export async function programmeMeasurements(folder: string): Promise<Measurement[]> {
  const path = join(folder, 'programme.breakledger')
  const archive = await openArchive({ path, program: 'bench' })
  for (let at = 0; at < studies; at++) await makeStudy(archive, at)
  const { 'pulls.list': listPulls, 'pulls.stock': stock } = pullHandlers({
    archive,
    tasks: createLongTasks(),
    clock: { instant: () => instant },
  } as never)
  const many = (studies * blocksPerStudy).toLocaleString('en-GB')
  const list = (change: object) => () => archive.listSpecimens(listQuery.parse(change))
  const asked: Record<string, () => unknown> = {
    [`list ${many} specimens (first 200)`]: list({}),
    [`find two words among ${many} specimens`]: list({ text: 'epoxy bilge' }),
    [`sort ${many} specimens by strength, found by a word`]: list({
      ...{ text: 'shelf', sort: 'strengthMPa', descending: true },
    }),
    [`filter ${many} specimens by adhesive, exposure and age`]: list({
      filter: { adhesive: 'epoxy E4', exposure: 'bilge', ageLeastMonths: 12, ageMostMonths: 24 },
    }),
    [`find a day among ${many} specimens`]: list({ text: '2031-03-04' }),
    [`find a load among ${many} specimens`]: list({ text: 'peak 4007' }),
    [`list those of ${many} specimens that wait`]: list({ status: 'waiting' }),
    [`due pulls of ${studies} studies with ${many} blocks`]: () => listPulls({ studyId: null }),
    [`page of one of ${studies} studies`]: () => archive.study(studies / 2),
    [`shelf of one of ${studies} studies`]: () => stock({ studyId: studies / 2 }),
    [`list of ${studies} studies`]: () => archive.studies(),
  }
  const measurements: Measurement[] = []
  for (const [what, work] of Object.entries(asked)) measurements.push(row(what, await medianMs(9, work), mostMs))
  await archive.close()
  const opening = await medianMs(3, async () => (await openArchive({ path, program: 'bench' })).close())
  return [...measurements, row(`open an archive of ${many} specimens`, opening, mostOpeningMs)]
}

const row = (what: string, value: number, most: number): Measurement => ({
  ...{ what, value, unit: 'ms', baseline: null },
  target: { text: `under ${most}`, met: value < most },
})

/** Plans a study, glues all of it on a day of its own, and enters a reading of a dial for every block of its first two ages. */
async function makeStudy(archive: Archive, at: number): Promise<void> {
  const fields = studyFields.parse({
    title: `Study ${at + 1}: ${adhesives[at % 5]} against the others`,
    ...{ adhesives, jointTypes: ['long grain to long grain'], gapsMm: [0], exposures: ['loft', 'bilge'] },
    ...{ agesMonths: [0, 6, 12, 24, 60], blocksPerCell: 10, sparesPerSeries: 0, windowDays: 14, cvPercent: 12 },
    ...{ overlapLengthMm: 30, overlapWidthMm: 20, wood: 'beech', seed: at + 1 },
    boards: Array.from({ length: 10 }, (_, board) => ({ name: `plank ${at + 1}-${board + 1}`, blocks: 50 })),
  })
  const { studyId } = await archive.addStudy(fields, instant, 'bench')
  await archive.allocateStudy(() => {}, new AbortController().signal, studyId, instant, 'bench')
  const { blocks } = await archive.glueUpPlan(studyId)
  const { glueUpId } = await archive.addGlueUp({
    ...{ studyId, recordedAt: instant, by: 'bench', demo: true },
    fields: glueUpFields.parse({ gluedOn: plusDays('2031-03-01', 3 * at) }),
    blocks: blocks.map(({ blockId }, index) =>
      newGluedBlock.parse({ blockId, areaMm2: 598 + (index % 5), place: `shelf ${at % 40}` }),
    ),
  })
  const { specimens } = await archive.glueUp(glueUpId)
  const readings = specimens
    .filter(({ ageMonths }) => ageMonths === 0 || ageMonths === 6)
    .map(({ specimenId, ageMonths }, index) =>
      dialReading.parse({
        ...{ specimenId, peakN: 4000 + 7 * index, woodFailurePercent: 5 * (index % 20), resolutionN: 10 },
        brokenOn: plusDays('2031-03-02', 3 * at + 30 * ageMonths!),
      }),
    )
  for (let from = 0; from < readings.length; from += readingsAtOnce)
    await archive.addDialReadings(readings.slice(from, from + readingsAtOnce), instant, 'bench')
}
