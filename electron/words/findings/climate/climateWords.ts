import type { TemperatureUnit } from '#contract/findings/climate.ts'
import type { ClimateCount, ClimateOutcome, ExposureClimate, LoggerRow } from '#contract/findings/climateAnswers.ts'
import { frozenC, thawedC } from '#domain/climate/freezeThaw.ts'
import { countOf } from '../../units/counts.ts'
import { writeCount, writeFixed, writeTenths } from '../../units/numbers.ts'
import type { Quantities } from '../../units/quantities.ts'
import { utcDayWords, utcInstantWords } from '../../units/times.ts'

type Extent = { min: number; mean: number; max: number }
const hoursPerYear = 8766
const hoursPerDay = 24

/** From the lowest to the highest value, with the mean. */
export function extentWords({ min, mean, max }: Extent, number: (value: number) => string, unit: string): string {
  return `${number(min)} to ${number(max)} ${unit} (mean ${number(mean)})`
}

/** How long readings cover: in days as long as those can be grasped, so that a leap year stands in days beside the others. */
export function coveredWords(hours: number): string {
  if (hours >= 2 * hoursPerYear) return `${writeFixed(hours / hoursPerYear, 1)} years`
  return hours >= 2 * hoursPerDay
    ? `${writeCount(Math.round(hours / hoursPerDay))} days`
    : `${writeFixed(hours, 1)} hours`
}

/** The size of swings that are counted, in the units of the person. */
export function swingSizeWords(least: number, quantities: Quantities | null): string {
  if (quantities === null) return `${least} % or more`
  const { factor, unit } = quantities.temperature
  return `${writeTenths(least * factor)} ${unit} or more`
}

/** From where on something is counted, and that nobody but this program says so. */
export function countedFromWords({ temperature }: Pick<Quantities, 'temperature'>): string {
  return (
    `Frozen is a reading of ${temperature.text(frozenC)} or less, thawed again one of ${temperature.text(thawedC)} or more. ` +
    'These two and the sizes of swings are chosen for this table; no standard names them.'
  )
}

/** What climate the blocks of an exposure saw, in one sentence; `moisture` is that to which the air would bring wood in the end. */
export function exposureClimateWords(
  { exposure, fromS, toS, whole, simulated }: ExposureClimate,
  quantities: Quantities,
) {
  const { temperature } = quantities
  const { temperatureC, humidityPercent, moisturePercent, freezeThawCycles } = whole
  const air = `air of ${extentWords(temperatureC, temperature.number, temperature.unit)}`
  const damp =
    humidityPercent === null || moisturePercent === null
      ? ''
      : `, ${extentWords(humidityPercent, writeTenths, '% relative humidity')}, which brings wood to ${writeTenths(moisturePercent.min)} to ${writeTenths(moisturePercent.max)} % moisture in the end`
  const frost =
    freezeThawCycles === 0
      ? 'it never froze and thawed'
      : `it froze and thawed ${freezeThawCycles === 1 ? 'once' : `${writeCount(freezeThawCycles)} times`}`
  const span = `${utcDayWords(fromS)} to ${utcDayWords(toS)}`
  return `Blocks in ${exposure} had ${air}${damp}; ${frost} (${span}${simulated ? ', simulated' : ''}).`
}

/** One row of a logger's file as what it becomes. */
export function loggerRowWords(
  { row, fate, timeS, temperature, humidityPercent, reason }: LoggerRow,
  unit: TemperatureUnit,
) {
  if (timeS === null || temperature === null || fate === 'rejected') return reason ?? `Row ${row} is rejected.`
  const humidity = humidityPercent === null ? 'no relative humidity' : `${humidityPercent} % relative humidity`
  const said = `Row ${row}: ${utcInstantWords(timeS)}, ${temperature} °${unit}, ${humidity}.`
  return reason === null ? said : `${said} ${reason}`
}

/** What an import of a logger's file came to, or would. */
export function climateOutcomeWords({
  new: made,
  alreadyThere,
  rejected,
  dryRun,
  fromS,
  toS,
  newestFirst,
}: ClimateOutcome) {
  const are = dryRun ? 'would be new' : made === 1 ? 'is new' : 'are new'
  const span = fromS === null || toS === null ? '' : `, from ${utcInstantWords(fromS)} to ${utcInstantWords(toS)}`
  const sentences = [
    `${countOf(made, 'reading')} ${are}${span}; ${writeCount(alreadyThere)} there already, ${countOf(rejected, 'row')} rejected.`,
    ...(newestFirst ? ['The newest reading stands first in this file, so it was read from its end.'] : []),
  ]
  return sentences.join(' ')
}

/** A stretch of time without readings. */
export function climateGapWords({ fromS, toS }: { fromS: number; toS: number }): string {
  return `No reading from ${utcInstantWords(fromS)} to ${utcInstantWords(toS)}: ${coveredWords((toS - fromS) / 3600)}.`
}

/** How many stretches are without readings, and how long they are together. */
export function climateGapsWords(count: number, hours: number): string {
  if (count === 0) return 'No gap: no reading is missing for more than three times the usual interval.'
  return `${countOf(count, 'gap')} of more than three times the usual interval, ${coveredWords(hours)} together.`
}

/** A year, or all years, of a store as one line of text. */
export function climateCountWords(count: ClimateCount, quantities: Quantities): string {
  const { temperature } = quantities
  const parts = [
    extentWords(count.temperatureC, temperature.number, temperature.unit),
    ...(count.humidityPercent === null ? [] : [extentWords(count.humidityPercent, writeTenths, '% RH')]),
    ...(count.moisturePercent === null ? [] : [extentWords(count.moisturePercent, writeTenths, '% moisture')]),
    `${countOf(count.freezeThawCycles, 'freeze-thaw cycle')}`,
  ]
  return `${coveredWords(count.hours)} of readings: ${parts.join('; ')}`
}

/** A store as people call it. */
export function storeName({ kind, name }: { kind: 'place' | 'exposure'; name: string }): string {
  return `${kind} ${name}`
}

/** How much of a file is read. */
export function percentDone({ done, total }: { done: number; total: number }): string {
  return `${total > 0 ? Math.floor((100 * done) / total) : 0} %`
}
