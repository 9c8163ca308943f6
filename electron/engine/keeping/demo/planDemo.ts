// Held by tests/engine/keeping/demo/fillDemo.spec.ts.
import type { Archive } from '#archive/archive.ts'
import { glueUpFields } from '#contract/programme/glueUp.ts'
import type { GlueUpRecord } from '#contract/programme/glueUpProcedures.ts'
import { demoAdhesives, demoAuthor, demoGluedOn, demoNote, demoSizes, demoStart, demoStudyFields } from './demoStudy.ts'

/** The study of the demo, and the day on which its first adhesive is glued. */
export type PlannedDemo = { studyId: number; startOn: string }

/** The demo study where it is planned. `isOurs` false: another version of the program planned it otherwise. */
export async function demoPlan(
  archive: Pick<Archive, 'studies'>,
): Promise<(PlannedDemo & { allocated: number; isOurs: boolean }) | null> {
  for (const { studyId, fields, counts } of (await archive.studies()).rows) {
    const { demo, startOn } = fields
    if (!demo || startOn === null) continue
    const isOurs = JSON.stringify(fields) === JSON.stringify(demoStudyFields(startOn))
    return { studyId, startOn, allocated: counts.allocated, isOurs }
  }
  return null
}

/** Plans the study and allocates its blocks, where that was not done yet. */
export async function planDemo(archive: Archive, today: string, signal: AbortSignal): Promise<PlannedDemo> {
  const planned = await demoPlan(archive)
  const startOn = planned?.startOn ?? demoStart(today)
  const instant = `${startOn}T08:00:00.000Z`
  const studyId = planned?.studyId ?? (await archive.addStudy(demoStudyFields(startOn), instant, demoAuthor)).studyId
  if ((planned?.allocated ?? 0) === 0) await archive.allocateStudy(() => {}, signal, studyId, instant, demoAuthor)
  return { studyId, startOn }
}

/** The blocks of the demo that are glued, adhesive by adhesive, in the order of their labels. */
export async function demoSpecimens(archive: Pick<Archive, 'glueUps' | 'glueUp'>): Promise<GlueUpRecord['specimens']> {
  const glueUps = await archive.glueUps()
  const records = await Promise.all(glueUps.map(({ glueUpId }) => archive.glueUp(glueUpId)))
  return records.reverse().flatMap(({ specimens }) => specimens)
}

/** Glues all blocks of each adhesive in a session of its own, where that was not done yet. */
export async function glueDemo(archive: Archive, { studyId, startOn }: PlannedDemo): Promise<void> {
  const { blocks } = await archive.glueUpPlan(studyId)
  for (const adhesive of demoAdhesives) {
    const own = blocks.filter((block) => block.adhesive === adhesive.name)
    if (own.length === 0) continue
    const { name, lot } = adhesive
    const gluedOn = demoGluedOn(startOn, adhesive)
    await archive.addGlueUp({
      ...{ recordedAt: `${gluedOn}T10:00:00.000Z`, by: demoAuthor, studyId, demo: true },
      fields: glueUpFields.parse({
        ...{ gluedOn, temperatureC: 19, humidityPercent: 60, lots: [{ adhesive: name, lot }], woodMoisturePercent: 11 },
        ...{ spreadGPerM2: 200, openTimeMin: 8, clampTimeMin: 1200, pressureMPa: 0.6 },
        ...{ people: 'two pupils', notes: demoNote },
      }),
      blocks: demoSizes(adhesive, own).map(({ block, ...size }) => ({
        ...{ blockId: block.blockId, asPlanned: false },
        ...size,
      })),
    })
  }
}
