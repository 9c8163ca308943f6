import type { ClimateStore } from '#contract/findings/climate.ts'
import {
  climateCountWords,
  climateGapsWords,
  climateGapWords,
  climateOutcomeWords,
  loggerRowWords,
  percentDone,
} from '#words/findings/climate/climateWords.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { type Command, type CommandIo, type CommandValues, UsageError } from './command.ts'
import { jsonLine, jsonPage } from './jsonLine.ts'
import { byHelp, dryRunHelp, nameOption, proposeHelp, textOption } from './optionValues.ts'
import { archiveOf, headsFile } from './ownArchive.ts'
import { programName } from './programName.ts'

export const climateCommand: Command = {
  name: 'climate',
  operands: '[FILE]',
  summary: "Brings in a logger's file of temperature and humidity (CSV or XLSX), or says what climate a store had.",
  options: {
    place: { type: 'string', value: 'NAME', help: 'where the logger hung: a place where blocks lie' },
    exposure: { type: 'string', value: 'NAME', help: 'or an exposure that blocks go through' },
    map: { type: 'string', value: 'MAP.json', help: 'what the columns of FILE mean' },
    propose: proposeHelp,
    'dry-run': dryRunHelp,
    by: byHelp,
  },
  usesArchive: true,
  details: [
    'MAP.json: {"headerRow": 1, "time": {"column": "Time", "dateFormat": "D.M.YYYY"}, "timeZone": "+01:00",',
    '"temperature": {"column": "Temp", "unit": "C" or "F"}, "humidity": {"column": "RH"}}; optional timeOfDay: {"column"},',
    'sheet, delimiter, decimal, encoding. The time zone is what the clock of the logger kept: UTC, an offset, or Europe/Lisbon.',
    '',
    'Each row is a reading or rejected, with the reason in one sentence; nothing is guessed. Times rise: what goes back is rejected.',
    'What is kept already is not kept twice. At most six million readings (ten years at one a minute) in 200 MB.',
    '',
    'With --json: per row {row, fate, timeS, temperature, humidityPercent, reason}, of rejected rows the first thousand; last',
    '{event: "imported", new, alreadyThere, rejected, fileSha256, dryRun}. Without FILE one line for each year, with its counts.',
  ],
  async run({ io, values, positionals, json }) {
    const [file] = positionals
    if (values.propose === true) {
      if (file === undefined) throw new UsageError('"climate --propose" needs FILE.')
      const { proposeClimate } = await import('#engine/importClimate.ts')
      await io.out((json ? jsonLine : jsonPage)(mappingText(await proposeClimate(file))))
      return 0
    }
    const store = storeOf(values)
    return file === undefined ? await show(io, values, store, json) : await bringIn(io, values, file, store, json)
  },
}

function storeOf(values: CommandValues): ClimateStore {
  const [place, exposure] = [nameOption(values, 'place'), nameOption(values, 'exposure')]
  if ((place === undefined) === (exposure === undefined))
    throw new UsageError('"climate" needs --place NAME or --exposure NAME, one of the two.')
  return place === undefined ? { kind: 'exposure', name: exposure! } : { kind: 'place', name: place }
}

type Proposal = Awaited<ReturnType<typeof import('#engine/importClimate.ts')['proposeClimate']>>

/** A proposal as a mapping; what a person has to say is written so that it cannot be overlooked. */
function mappingText(found: Proposal): object {
  const open = 'SAY'
  return {
    ...(found.sheet === null ? {} : { sheet: found.sheet }),
    headerRow: found.headerRow,
    time: {
      column: found.time ?? open,
      ...(found.dateFormats.length === 0 ? {} : { dateFormat: found.dateFormat ?? found.dateFormats.join(' or ') }),
    },
    ...(found.timeOfDay === null ? {} : { timeOfDay: { column: found.timeOfDay } }),
    timeZone: open,
    temperature: { column: found.temperature ?? open, unit: found.temperatureUnit ?? open },
    ...(found.humidity === null ? {} : { humidity: { column: found.humidity } }),
    ...(found.decimal === null ? {} : { decimal: found.decimal }),
  }
}

async function bringIn(
  io: CommandIo,
  values: CommandValues,
  file: string,
  store: ClimateStore,
  json: boolean,
): Promise<number> {
  const mapFile = textOption(values, 'map')
  if (mapFile === undefined) throw new UsageError('"climate FILE" needs --map MAP.json; --propose prints one.')
  const { importClimate } = await import('#engine/importClimate.ts')
  const by = nameOption(values, 'by') ?? null
  const { outcome, mapping, rows } = await importClimate(
    { file, mapFile, archive: archiveOf(values), store, by, dryRun: values['dry-run'] === true },
    programName,
    headsFile(),
    (progress) => {
      if (io.interactive) io.err(`\rread ${percentDone(progress)}`)
    },
    io.interrupt,
  )
  if (io.interactive) io.err('\n')
  const { unit } = mapping.temperature
  let lines: string[] = []
  for (const row of rows()) {
    if (json) lines.push(jsonLine(row))
    else if (outcome.dryRun || row.fate === 'rejected') lines.push(`${plainText(loggerRowWords(row, unit))}\n`)
    if (lines.length < 500) continue
    if (!(await io.out(lines.join('')))) return 0
    lines = []
  }
  await io.out(lines.join(''))
  const { new: made, alreadyThere, rejected, fileSha256, dryRun } = outcome
  if (json) await io.out(jsonLine({ event: 'imported', new: made, alreadyThere, rejected, fileSha256, dryRun }))
  else await io.out(plainText(`${[...outcome.gaps.map(climateGapWords), climateOutcomeWords(outcome)].join('\n')}\n`))
  return 0
}

async function show(io: CommandIo, values: CommandValues, store: ClimateStore, json: boolean): Promise<number> {
  const { climateOfArchive } = await import('#engine/importClimate.ts')
  const { climate, simulated } = climateOfArchive(archiveOf(values), programName, store)
  if (climate === null) return 1
  const quantities = quantitiesIn('SI')
  for (const year of climate.years)
    await io.out(
      json
        ? jsonLine({ ...year, simulated })
        : `${plainText(`${year.year}: ${climateCountWords(year, quantities)}${simulated ? ' (simulated)' : ''}`)}\n`,
    )
  if (!json) await io.out(`${plainText(climateGapsWords(climate.gapCount, climate.gapHours))}\n`)
  return 0
}
