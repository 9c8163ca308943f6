import { countOf } from '#words/units/counts.ts'
import { type Command, UsageError } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { numberOption, textOption } from './optionValues.ts'
import { archiveOf } from './ownArchive.ts'
import { programName } from './programName.ts'

export const calendarCommand: Command = {
  name: 'calendar',
  operands: '',
  summary: 'Writes the pulls of a study as a calendar file (RFC 5545), one all-day event each.',
  options: {
    study: { type: 'string', value: 'ID', help: 'the study' },
    out: { type: 'string', value: 'FILE.ics', help: 'the calendar file; one that is there is replaced' },
  },
  usesArchive: true,
  details: [
    'Opened again in a calendar, it updates the pulls that are there: each keeps its identifier, and its SEQUENCE rises when it',
    'is moved or skipped. Two files of an unchanged archive differ in DTSTAMP alone.',
    'An age of months ends on the same day of the month, or on its last day: 31 August and 6 months are 28 or 29 February.',
    '',
    'With --json: {events, file}.',
  ],
  async run({ io, values, json }) {
    const studyId = numberOption(values, 'study', { from: 1, whole: true })
    const file = textOption(values, 'out')
    if (studyId === undefined || file === undefined) throw new UsageError('--study and --out must be given.')
    const { writeCalendar } = await import('#engine/programme/publishedFiles.ts')
    const archive = { path: archiveOf(values), program: programName }
    const written = await writeCalendar(archive, studyId, file, new Date().toISOString())
    await io.out(json ? jsonLine(written) : `${countOf(written.events, 'pull')}: ${written.file}\n`)
    return 0
  },
}
