import { readFile } from 'node:fs/promises'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { climateMapping } from '#contract/findings/climate.ts'
import { buildIfNeeded } from '#shells/start/build.ts'
import { benchEngine } from '#tests/fakes/benchEngine.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

const loft = { kind: 'exposure', name: 'loft' } as const
const mapping = climateMapping.parse({
  ...{ headerRow: 2, decimal: ',', timeZone: '+01:00', timeOfDay: { column: 'Uhrzeit' } },
  time: { column: 'Datum', dateFormat: 'D.M.YYYY' },
  ...{ temperature: { column: 'Temperatur (°C)', unit: 'C' }, humidity: { column: 'Feuchte (% rF)' } },
})

let home: Awaited<ReturnType<typeof temporaryArchive>>
let made: Awaited<ReturnType<typeof benchEngine>>
let file: { fileName: string; content: Uint8Array<ArrayBuffer> }
beforeEach(async () => {
  await buildIfNeeded('threads')
  home = await temporaryArchive()
  made = await benchEngine(home.archive)
  const sample = new URL('../../../../samples/climate/sail-loft.csv', import.meta.url)
  file = { fileName: 'sail-loft.csv', content: new Uint8Array(await readFile(sample)) }
})
afterEach(async () => {
  await made.engine.close()
  await home.remove()
})

describe("a logger's file", () => {
  it('is proposed, tried, brought in once, and proposed the same way the next time', async () => {
    const { handlers } = made
    const asked = { ...file, mapping, store: loft }
    expect(await handlers['climate.propose']({ ...file, sheet: null, headerRow: null })).toMatchObject({
      ...{ headerRow: 2, time: 'Datum', kept: null },
    })
    expect(await handlers['climate.try'](asked)).toMatchObject({ new: 600, rejected: 0, gapCount: 1, dryRun: true })
    expect(await handlers['climate.imports']({})).toEqual([])
    expect(await handlers['climate.import']({ ...asked, by: 'bench' })).toMatchObject({ new: 600, dryRun: false })
    expect(await handlers['climate.import']({ ...asked, by: 'bench' })).toMatchObject({ new: 0, alreadyThere: 600 })
    expect(await handlers['climate.imports']({})).toMatchObject([{ readings: 600, by: 'bench', store: 'loft' }])
    expect(await handlers['climate.propose']({ ...file, sheet: null, headerRow: null })).toMatchObject({
      kept: mapping,
    })
  })

  it('says what climate the store had, until it is set aside', async () => {
    const { handlers } = made
    await handlers['climate.import']({ ...file, mapping, store: loft, by: 'bench' })
    const limits = { temperatureBelowC: 0, temperatureAboveC: 30, humidityBelowPercent: 35, humidityAbovePercent: 80 }
    const found = await handlers['climate.of']({ store: loft, limits })
    expect(found.climate).toMatchObject({ readings: 600, gapCount: 1 })
    expect(await handlers['climate.exposures']({})).toMatchObject([{ exposure: 'loft' }])
    const word = { climateImportId: 1, kind: 'set-aside', by: 'bench', reason: 'it hung in the office' } as const
    await handlers['climate.decide'](word)
    expect((await handlers['climate.of']({ store: loft, limits })).climate).toBeNull()
  })

  it('is stopped before anything of it is stored', async () => {
    const { handlers } = made
    const bringing = handlers['climate.import']({ ...file, mapping, store: loft, by: 'bench' })
    await expect.poll(() => handlers['task.cancel']({ task: 'climate' })).toBe(true)
    await expect(bringing).rejects.toMatchObject({ code: 'cancelled' })
    expect(await handlers['climate.imports']({})).toEqual([])
  })

  it('is refused where it is larger than a page sends', async () => {
    const large = { fileName: 'long.csv', content: new Uint8Array(30_000_001) }
    await expect(made.handlers['climate.try']({ ...large, mapping, store: loft })).rejects.toMatchObject({
      ...{ code: 'invalid-input', message: expect.stringContaining('30.0 MB') },
    })
  })
})
