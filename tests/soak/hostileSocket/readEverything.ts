import type { Client } from '#contract/wire/carrier.ts'

/** Reads back every record that can be asked for; resolves with one line for each that cannot be read. */
export async function readEverything({ call }: Client): Promise<string[]> {
  const unreadable: string[] = []
  async function read<T>(what: string, question: () => Promise<T>): Promise<T | null> {
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
  const report = await read('verify', () => call('archive.verify', {}))
  for (const { where, what } of report?.faults ?? []) unreadable.push(`verify: ${where}: ${what}`)
  return unreadable
}
