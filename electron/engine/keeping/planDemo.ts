// Held by tests/engine/keeping/fillDemo.spec.ts.
import type { Archive } from '#archive/archive.ts'
import { glueUpFields } from '#contract/programme/glueUp.ts'
import {
  type DemoGroup,
  demoAuthor,
  demoGluedOn,
  demoNote,
  demoSizes,
  demoStart,
  demoStudyFields,
  isOfGroup,
} from './demoStudy.ts'

/** The demo study where it is planned, and the day on which its first adhesive is glued. */
export async function demoPlan(
  archive: Archive,
): Promise<{ studyId: number; startOn: string; allocated: number } | null> {
  for (const { studyId, fields, counts } of (await archive.studies()).rows)
    if (fields.demo && fields.startOn !== null) return { studyId, startOn: fields.startOn, allocated: counts.allocated }
  return null
}

/** Plans the study and allocates its blocks, where that was not done yet. */
export async function planDemo(archive: Archive, today: string, signal: AbortSignal) {
  const planned = await demoPlan(archive)
  const startOn = planned?.startOn ?? demoStart(today)
  const instant = `${startOn}T08:00:00.000Z`
  const studyId = planned?.studyId ?? (await archive.addStudy(demoStudyFields(startOn), instant, demoAuthor)).studyId
  if ((planned?.allocated ?? 0) === 0) await archive.allocateStudy(() => {}, signal, studyId, instant, demoAuthor)
  return { studyId, startOn }
}

/** The specimens of a group in the order of their labels; null: it is not glued. */
export async function demoSpecimens(archive: Pick<Archive, 'glueUps' | 'glueUp'>, group: DemoGroup) {
  for (const { glueUpId } of await archive.glueUps()) {
    const { specimens } = await archive.glueUp(glueUpId)
    const ofGroup = specimens.filter((one) => isOfGroup(group, one))
    if (ofGroup.length > 0) return ofGroup
  }
  return null
}

/** Glues the blocks of a group in a session of its own. */
export async function glueGroup(archive: Archive, studyId: number, startOn: string, group: DemoGroup) {
  const gluedOn = demoGluedOn(startOn, group)
  const { blocks } = await archive.glueUpPlan(studyId)
  const { name: adhesive, lot } = group.adhesive
  const { glueUpId } = await archive.addGlueUp({
    ...{ recordedAt: `${gluedOn}T10:00:00.000Z`, by: demoAuthor, studyId, demo: true },
    fields: glueUpFields.parse({
      ...{ gluedOn, temperatureC: 19, humidityPercent: 60, lots: [{ adhesive, lot }], woodMoisturePercent: 11 },
      notes: demoNote,
    }),
    blocks: blocks
      .filter((block) => isOfGroup(group, block))
      .map(({ blockId }, index) => ({ blockId, ...demoSizes(group)[index]! })),
  })
  return (await archive.glueUp(glueUpId)).specimens
}
