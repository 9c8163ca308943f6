import type { ArchiveReader } from '#archive/archiveReader.ts'
import type { ClimateLimits, ClimateStore } from '#contract/findings/climate.ts'
import { climateLimits } from '#contract/findings/climate.ts'
import type { ClimateOfStore, ExposureClimate, StoreClimate } from '#contract/findings/climateAnswers.ts'
import { pullsToCome } from '#domain/climate/pullsToCome.ts'
import { storeClimate } from '#domain/climate/storeClimate.ts'
import { storedSeries } from '#domain/climate/storedSeries.ts'
import { studyPulls } from '#domain/programme/calendar/studyPulls.ts'

export type ClimateArchive = Pick<
  ArchiveReader,
  | 'climateReadings'
  | 'climateStores'
  | 'observations'
  | 'pullSources'
  | 'specimensOfStore'
  | 'storeInForce'
  | 'waitingInStore'
>

/** What was worked out of the readings of a store, until others count. */
export type ClimateMemory = Map<string, StoreClimate | null>

/** So many stores and limits are remembered. */
const mostRemembered = 24

function climateOf(
  archive: ClimateArchive,
  { store, imports }: { store: ClimateStore; imports: readonly number[] },
  limits: ClimateLimits,
  memory: ClimateMemory,
): StoreClimate | null {
  const key = JSON.stringify([store, imports, limits])
  const known = memory.get(key)
  if (known !== undefined) return known
  const found = storeClimate(archive.climateReadings(store).series, limits)
  if (memory.size >= mostRemembered) memory.delete(memory.keys().next().value!)
  memory.set(key, found)
  return found
}

/** The climate of a store, the strength of the blocks in it and the days on which more of them are to leave it, as the archive is on a day. */
export function answerClimate(
  archive: ClimateArchive,
  { store: wanted, limits, today }: { store: ClimateStore; limits: ClimateLimits; today: string },
  memory: ClimateMemory,
): ClimateOfStore {
  const store = archive.storeInForce(wanted)
  const known = archive.climateStores().find((one) => one.store.kind === store.kind && one.store.name === store.name)
  const stored = new Set(archive.specimensOfStore(store))
  return {
    store,
    simulated: known?.simulated ?? false,
    climate: known === undefined ? null : climateOf(archive, known, limits, memory),
    series: storedSeries(archive.observations().filter(({ specimenId }) => stored.has(specimenId))),
    toCome: pullsToCome(
      archive.waitingInStore(store),
      archive.pullSources(null).rows.flatMap((source) => studyPulls(source, today)),
    ),
  }
}

/** What each exposure that has readings did to its blocks. */
export function answerExposures(archive: ClimateArchive, memory: ClimateMemory): ExposureClimate[] {
  return archive.climateStores().flatMap((known) => {
    if (known.store.kind !== 'exposure') return []
    const found = climateOf(archive, known, climateLimits.parse({}), memory)
    if (found === null) return []
    const { fromS, toS, whole } = found
    return [{ exposure: known.store.name, fromS, toS, simulated: known.simulated, whole }]
  })
}
