import { catalogueKind } from '#contract/programme/catalogue.ts'
import type { Client } from '#contract/wire/carrier.ts'

/** Asks a question, and notes that it cannot be answered. */
type Read = <T>(what: string, question: () => Promise<T>) => Promise<T | null>

/** Reads back every record that can be asked for; resolves with one line for each that cannot be read. */
export async function readEverything(client: Client): Promise<string[]> {
  const { call } = client
  const unreadable: string[] = []
  const read: Read = async (what, question) => {
    try {
      return await question()
    } catch (thrown) {
      unreadable.push(`${what}: ${thrown instanceof Error ? thrown.message.slice(0, 300) : thrown}`)
      return null
    }
  }

  await read('app.info', () => call('app.info', {}))
  await read('bench.state', () => call('bench.state', {}))
  await read('weights', () => call('weights.list', {}))
  await read('calibrations.history', () => call('calibrations.history', {}))
  await read('checkWeight.history', () => call('checkWeight.history', {}))
  for (let offset = 0, total = 1; offset < total; offset += 1000) {
    const page = await read(`specimens from ${offset}`, () => call('specimens.list', { offset, limit: 1000 }))
    total = page?.total ?? 0
    for (const { specimenId } of page?.rows ?? [])
      await read(`specimen ${specimenId}`, () => call('specimens.get', { specimenId }))
  }
  for (let offset = 0, total = 1; offset < total; offset += 1000)
    total = (await read(`breaks from ${offset}`, () => call('breaks.list', { offset, limit: 1000 })))?.total ?? 0
  for (const breakId of (await read('breaks', () => call('breaks.ids', {}))) ?? []) {
    await read(`break ${breakId}`, () => call('breaks.get', { breakId }))
    await read(`curve ${breakId}`, () => call('breaks.curve', { breakId, maxPoints: 1000 }))
  }
  for (const { calibrationId } of (await read('calibrations', () => call('calibrations.list', {})))?.rows ?? [])
    await read(`calibration ${calibrationId}`, () => call('calibrations.get', { calibrationId }))
  for (const { reevaluationId } of (await read('reevaluations', () => call('reevaluations.list', {})))?.rows ?? [])
    await read(`reevaluation ${reevaluationId}`, () => call('reevaluations.get', { reevaluationId }))
  await readProgramme(client, read)
  const report = await read('verify', () => call('archive.verify', {}))
  for (const { where, what } of report?.faults ?? []) unreadable.push(`verify: ${where}: ${what}`)
  return unreadable
}

/** What studies, glue-ups, sessions, catalogue, files that were brought in, findings and pictures left. */
async function readProgramme({ call }: Client, read: Read): Promise<void> {
  for (const { studyId } of (await read('studies', () => call('studies.list', {})))?.rows ?? []) {
    await read(`study ${studyId}`, () => call('studies.get', { studyId }))
    await read(`pulls ${studyId}`, () => call('pulls.list', { studyId }))
    await read(`stock ${studyId}`, () => call('pulls.stock', { studyId }))
    await read(`glue-up plan ${studyId}`, () => call('glueUps.plan', { studyId }))
  }
  await read('pulls', () => call('pulls.list', { studyId: null }))
  for (const { glueUpId } of (await read('glue-ups', () => call('glueUps.list', {}))) ?? [])
    await read(`glue-up ${glueUpId}`, () => call('glueUps.get', { glueUpId }))
  for (const { breakingSessionId } of (await read('sessions', () => call('breaking.list', {}))) ?? [])
    await read(`session ${breakingSessionId}`, () => call('breaking.get', { breakingSessionId }))
  await read('catalogue', () => call('catalogue.counts', {}))
  for (const kind of catalogueKind.options)
    for (const { entryId } of (await read(`catalogue ${kind}`, () => call('catalogue.list', { kind })))?.rows ?? [])
      await read(`entry ${entryId}`, () => call('catalogue.get', { entryId }))
  await read('imports', () => call('imports.list', {}))
  for (const { storeKind, store } of (await read('climate', () => call('climate.imports', {}))) ?? [])
    await read(`climate of ${store}`, () => call('climate.of', { store: { kind: storeKind, name: store } }))
  await read('climate of exposures', () => call('climate.exposures', {}))
  for (const specimenId of (await read('specimen numbers', () => call('specimens.ids', {})))?.slice(0, 40) ?? [])
    for (const { attachment } of (await read('pictures', () => call('pictures.list', { specimenId, breakId: null }))) ??
      [])
      await read('picture', () => call('pictures.content', { attachmentId: attachment.attachmentId, from: 0 }))
  await read('overview', () => call('overview.of', {}))
  await read('findings', () => call('findings.of', {}))
  await read('ageing', () => call('findings.ageing', {}))
  await read('what to do next', () => call('findings.next', {}))
  for (const { keptFindingId } of (await read('kept findings', () => call('findings.kept', {})))?.rows ?? [])
    await read(`kept finding ${keptFindingId}`, () => call('findings.changes', { keptFindingId }))
}
