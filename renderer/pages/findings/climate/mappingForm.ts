import { type ClimateMapping, climateMapping } from '#contract/findings/climate.ts'
import type { ClimateProposal } from '#contract/findings/climateAnswers.ts'

/** A mapping as it is typed; '' where nothing is said. */
export type MappingTexts = Record<
  'time' | 'timeOfDay' | 'dateFormat' | 'timeZone' | 'temperature' | 'unit' | 'humidity' | 'decimal',
  string
>

/** What the fields begin with: the mapping of an earlier file with the same columns, else what the headings suggest. */
export function proposedTexts(found: ClimateProposal): MappingTexts {
  const { kept } = found
  if (kept !== null)
    return {
      ...{ time: String(kept.time.column), timeOfDay: String(kept.timeOfDay?.column ?? '') },
      ...{ dateFormat: kept.time.dateFormat ?? '', timeZone: kept.timeZone },
      ...{ temperature: String(kept.temperature.column), unit: kept.temperature.unit },
      ...{ humidity: String(kept.humidity?.column ?? ''), decimal: kept.decimal ?? '' },
    }
  return {
    ...{ time: found.time ?? '', timeOfDay: found.timeOfDay ?? '', dateFormat: found.dateFormat ?? '', timeZone: '' },
    ...{ temperature: found.temperature ?? '', unit: found.temperatureUnit ?? '', humidity: found.humidity ?? '' },
    decimal: found.decimal ?? '',
  }
}

/** What is missing before a file can be read, by field. */
export function missingIn(texts: MappingTexts, found: ClimateProposal): Partial<MappingTexts> {
  const missing: Partial<MappingTexts> = {}
  if (texts.time === '') missing.time = 'Choose the column that holds the time.'
  if (texts.temperature === '') missing.temperature = 'Choose the column that holds the temperature.'
  if (texts.unit === '') missing.unit = 'Say in which unit the temperatures are.'
  if (texts.timeZone.trim() === '') missing.timeZone = 'Say what time the clock of the logger kept.'
  if (texts.dateFormat.trim() === '' && found.dateFormats.length > 1)
    missing.dateFormat = 'The days can be read in more than one way; say how they are written.'
  return missing
}

/** The mapping that the fields say, or what does not fit. */
export function mappingOf(
  texts: MappingTexts,
  { headerRow, sheet }: Pick<ClimateProposal, 'headerRow' | 'sheet'>,
): ClimateMapping | null {
  const dateFormat = texts.dateFormat.trim()
  const read = climateMapping.safeParse({
    ...(sheet === null ? {} : { sheet }),
    headerRow,
    time: { column: texts.time, ...(dateFormat === '' ? {} : { dateFormat }) },
    ...(texts.timeOfDay === '' ? {} : { timeOfDay: { column: texts.timeOfDay } }),
    timeZone: texts.timeZone.trim(),
    temperature: { column: texts.temperature, unit: texts.unit },
    ...(texts.humidity === '' ? {} : { humidity: { column: texts.humidity } }),
    ...(texts.decimal === '' ? {} : { decimal: texts.decimal }),
  })
  return read.success ? read.data : null
}
