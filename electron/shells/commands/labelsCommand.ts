import { type LabelChoice, mostNumbers } from '#contract/programme/labelProcedures.ts'
import type { SheetWish } from '#engine/programme/publishedFiles.ts'
import { countOf } from '#words/units/counts.ts'
import { type Command, type CommandValues, UsageError } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { numberOption, textOption, wordOption } from './optionValues.ts'
import { archiveOf } from './ownArchive.ts'
import { programName } from './programName.ts'

export const labelsCommand: Command = {
  name: 'labels',
  operands: '',
  summary: 'Writes sheets of labels in exact millimetres: number, QR code and group of each block.',
  options: {
    out: { type: 'string', value: 'FILE.pdf', help: 'the sheets; FILE.html is the same page for any browser to print' },
    study: { type: 'string', value: 'ID', help: 'all blocks of a study' },
    numbers: {
      type: 'string',
      value: 'FIRST-LAST',
      help: 'running numbers without check digit, both included, whether there is a block or not',
    },
    sheet: { type: 'string', value: 'COLUMNSxROWS', help: 'labels on a page; 5x13 without it' },
    size: {
      type: 'string',
      value: 'WIDTHxHEIGHT',
      help: 'labels of an own size in mm instead, as many as the page holds',
    },
    page: { type: 'string', value: 'A4|Letter', help: 'A4 without it' },
  },
  usesArchive: true,
  details: [
    'A number is followed by its check digit (ISO/IEC 7064 MOD 11-2); one whose check would be X is skipped.',
    'A PDF is printed by a Chromium of this machine, the one that CHROMIUM_PATH names or one that is found.',
    'Print at 100 %: each sheet has a bar of 100 mm to measure.',
    '',
    'With --json: {labels, pages, file}.',
  ],
  async run({ io, values, json }) {
    const file = textOption(values, 'out')
    if (file === undefined) throw new UsageError('--out must be given.')
    const choice = choiceOf(values)
    const sheet = sheetOf(values)
    const { writeLabels } = await import('#engine/programme/publishedFiles.ts')
    const archive = { path: archiveOf(values), program: programName }
    const written = await writeLabels(archive, { choice, sheet }, file, process.env, io.interrupt)
    const words = `${countOf(written.labels, 'label')} on ${countOf(written.pages, 'page')}: ${written.file}\n`
    await io.out(json ? jsonLine(written) : words)
    return 0
  },
}

function choiceOf(values: CommandValues): LabelChoice {
  const studyId = numberOption(values, 'study', { from: 1, whole: true })
  const numbers = textOption(values, 'numbers')
  if ((studyId === undefined) === (numbers === undefined))
    throw new UsageError('One of --study and --numbers must be given.')
  if (studyId !== undefined) return { kind: 'study', studyId }
  const range = /^\s*(\d{1,7})\s*-\s*(\d{1,7})\s*$/.exec(numbers!)
  const [first, last] = [Number(range?.[1] ?? 0), Number(range?.[2] ?? 0)]
  if (first < 1 || last < first || last - first >= mostNumbers)
    throw new UsageError(
      `--numbers must be two running numbers from 1 to 9999999 as 1-120, not more than ${mostNumbers}, but is "${numbers}".`,
    )
  return { kind: 'numbers', first, last }
}

function sheetOf(values: CommandValues): SheetWish {
  const page = wordOption(values, 'page', ['A4', 'Letter']) ?? 'A4'
  const sizeMm = pairOption(
    values,
    'size',
    /^(\d+(?:\.\d+)?)\s*x\s*(\d+(?:\.\d+)?)$/i,
    'WIDTHxHEIGHT in mm, as 63.5x38',
  )
  const grid = pairOption(values, 'sheet', /^(\d{1,2})\s*x\s*(\d{1,2})$/i, 'COLUMNSxROWS, as 5x13')
  if (sizeMm !== null && grid !== null) throw new UsageError('--sheet and --size exclude each other.')
  return sizeMm !== null ? { page, sizeMm } : { page, grid: grid ?? [5, 13] }
}

/** Two numbers above 0, as an option's pattern finds them; null when the option is absent. */
function pairOption(values: CommandValues, name: string, pattern: RegExp, form: string): [number, number] | null {
  const text = textOption(values, name)
  if (text === undefined) return null
  const found = pattern.exec(text.trim())
  const [a, b] = [Number(found?.[1] ?? 0), Number(found?.[2] ?? 0)]
  if (!(a > 0 && b > 0)) throw new UsageError(`--${name} must be ${form}, but is "${text}".`)
  return [a, b]
}
