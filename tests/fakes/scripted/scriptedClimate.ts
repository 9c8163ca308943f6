import type { ClimateImportSummary } from '#contract/findings/climate.ts'
import { climateMapping } from '#contract/findings/climate.ts'
import type { Handlers } from '#contract/procedures.ts'
import { answerClimate, answerExposures, type ClimateArchive } from '#engine/findings/climate/answerClimate.ts'
import { demoLoggerFile } from '#engine/keeping/demo/demoClimate.ts'
import { climateOutcome } from '#exchange/climate/loggerOutcome.ts'
import { proposeLogger } from '#exchange/climate/proposeLogger.ts'
import { readLogger } from '#exchange/climate/readLogger.ts'
import { observed } from './scriptedFindings.ts'

const loft = { kind: 'exposure', name: 'loft' } as const
const fileSha256 = 'ab'.repeat(32)
const laterS = Date.UTC(2030, 0, 1) / 1000

async function loftReadings() {
  const mapping = climateMapping.parse({
    ...{ time: { column: 'Time' }, timeZone: 'UTC', humidity: { column: 'RH (%)' } },
    temperature: { column: 'Temperature (°C)', unit: 'C' },
  })
  const text = demoLoggerFile('2026-04-20', '2028-06-01')
  const { readings } = await readLogger('loft.csv', Buffer.from(text), mapping, laterS, () => {})
  const { timeS, temperature, humidityPercent } = readings
  return { timeS, temperatureC: temperature, humidityPercent }
}

export type ScriptedClimate = {
  handlers: Partial<Handlers>
  /** No file of a logger was brought in. */
  takeDown(): void
}

/** The climate of a loft over two years, worked out as the program does. */
export function scriptedClimate(): ScriptedClimate {
  let hung = true
  const breaks = observed()
  const memory = new Map()
  const archive = async (): Promise<ClimateArchive> => {
    const series = await loftReadings()
    const store = { store: loft, imports: [1], simulated: true }
    return {
      climateStores: () => (hung ? [store] : []),
      climateReadings: () => ({ ...store, series }),
      specimensOfStore: () => breaks.filter(({ exposure }) => exposure === 'loft').map(({ specimenId }) => specimenId),
      observations: () => breaks,
      storeInForce: (wanted) => wanted,
      waitingInStore: () => [],
      pullSources: () => ({ rows: [] }),
    }
  }
  const summary = async (): Promise<ClimateImportSummary> => {
    const { timeS } = await loftReadings()
    return {
      ...{ climateImportId: 1, recordedAt: '2028-06-01T08:00:00.000Z', by: 'bench 1', storeKind: 'exposure' },
      ...{ store: 'loft', fileName: 'sail-loft-logger.csv', fileSha256, temperatureUnit: 'C', rejected: 0 },
      ...{ readings: timeS.length, humidityReadings: timeS.length, fromS: timeS[0]!, toS: timeS.at(-1)! },
      ...{ temperatureSha256: fileSha256, humiditySha256: fileSha256, simulated: true, setAside: null },
    }
  }
  const read: Handlers['climate.try'] = async ({ fileName, content, mapping }) => {
    const file = await readLogger(fileName, Buffer.from(content), mapping, laterS, () => {})
    return climateOutcome(file, new Uint8Array(file.readings.row.length), { fileSha256, dryRun: true })
  }
  const handlers: Partial<Handlers> = {
    'climate.imports': async () => (hung ? [await summary()] : []),
    'climate.of': async ({ store, limits }) =>
      answerClimate(await archive(), { store, limits, today: '2028-06-01' }, memory),
    'climate.exposures': async () => answerExposures(await archive(), memory),
    'climate.propose': ({ fileName, content, sheet, headerRow }) =>
      proposeLogger(fileName, Buffer.from(content), { sheet, headerRow, earlier: [] }),
    'climate.try': read,
    'climate.import': async ({ by: _by, ...asked }) => ({ ...(await read(asked)), dryRun: false }),
  }
  return {
    handlers,
    takeDown() {
      hung = false
    },
  }
}
