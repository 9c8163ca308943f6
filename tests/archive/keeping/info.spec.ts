import { afterEach, beforeEach, expect, test } from 'vitest'
import { specimenFields } from '#contract/specimens/specimen.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { header, morning, session } from '../storedStudy.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

async function storeBreak(source: string, specimenId: number | null): Promise<void> {
  const { sessionId } = await home.archive.beginSession({ ...session, source })
  await home.archive.beginBreak(header(sessionId, specimenId))
}
async function addBlock(demo: boolean): Promise<number> {
  const fields = specimenFields.parse({ number: demo ? 'C1-L0-01' : 'A-1', adhesive: 'casein C1', demo })
  return (await home.archive.addSpecimen(fields, morning, 'bench')).specimenId
}
const held = async () => {
  const { own, demo, simulated, breaks } = await home.archive.info()
  return { own, demo, simulated, breaks }
}

test('an archive that holds nothing, or only what was invented, is nobody’s own', async () => {
  expect(await held()).toEqual({ own: false, demo: false, simulated: 0, breaks: 0 })
  await storeBreak('virtual amplifier: mixed', await addBlock(true))
  await storeBreak('virtual amplifier: mixed', null)
  expect(await held()).toEqual({ own: false, demo: true, simulated: 2, breaks: 2 })
})

test('a specimen that somebody made, or a measured break without one, makes it a person’s own', async () => {
  await storeBreak('/dev/ttyUSB0 at 115200 baud', null)
  expect(await held()).toEqual({ own: true, demo: false, simulated: 0, breaks: 1 })
  await storeBreak('virtual amplifier: mixed', await addBlock(false))
  expect(await held()).toEqual({ own: true, demo: false, simulated: 1, breaks: 2 })
})
