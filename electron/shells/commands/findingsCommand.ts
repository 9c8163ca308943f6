import type { GroupTraits } from '#contract/breaks/breakGroup.ts'
import { type FindingLine, findingKind } from '#contract/findings/lines.ts'
import {
  type FindingsOptions,
  findingsOptions,
  fittedDistribution,
  largestFactor,
  leastShare,
  woodFailureTreatment,
} from '#contract/findings/options.ts'
import { madeAlike } from '#words/breaks/groupName.ts'
import { basisText, failureWords, findingText } from '#words/findings/findingText.ts'
import { noteText } from '#words/findings/noteWords.ts'
import { plainText } from '#words/units/plainText.ts'
import { type Command, type CommandValues, UsageError } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { numberOption, textOption, wordOption } from './optionValues.ts'
import { archiveOf } from './ownArchive.ts'
import { programName } from './programName.ts'

// Not rounded, so that gaps that differ are two groups.
const groupText = (made: Omit<GroupTraits, 'ageMonths'>) => madeAlike(made, (mm) => `${mm} mm`)
const probability = { above: 0, below: 1, from: leastShare }

export const findingsCommand: Command = {
  name: 'findings',
  operands: '',
  summary: 'Says what the results of an archive or of a table show, with their uncertainty.',
  options: {
    table: { type: 'string', value: 'FILE.csv', help: 'a table of results instead of the archive' },
    'wood-failure': {
      type: 'string',
      value: woodFailureTreatment.options.join('|'),
      help: 'what torn wood does to a result; observed without it',
    },
    limit: { type: 'string', value: 'PERCENT', help: 'at or above it a block is a wood failure; 75 without it' },
    adjust: {
      type: 'string',
      value: 'FACTOR',
      help: 'adjusted: strength x (1 + FACTOR x wood failure / 100); 1 without it',
    },
    confidence: { type: 'string', value: 'P', help: '0.95 without it' },
    distribution: {
      type: 'string',
      value: fittedDistribution.options.join('|'),
      help: 'of the censored fit; all three without it',
    },
    'tolerance-confidence': { type: 'string', value: 'P', help: '0.75 without it' },
    'tolerance-content': { type: 'string', value: 'P', help: '0.95 without it: 5 % of all blocks are weaker' },
    reference: { type: 'string', value: 'GROUP', help: 'the group that the others are compared with' },
    margin: { type: 'string', value: 'PERCENT', help: 'margin of equivalence, of the mean of the second group' },
    only: { type: 'string', value: 'KIND,...', help: 'only these kinds of lines' },
    seed: { type: 'string', value: 'N', help: 'of the resampling for ranks; 1 without it' },
  },
  usesArchive: true,
  details: [
    'Table CSV: a header line with group and strength_MPa, and optionally specimen, wood_failure_percent, age_months, board,',
    'excluded_because (text: left out and counted). With age_months, the rows of a group at several ages are a series.',
    `Kinds: ${findingKind.options.join(', ')}.`,
    'The spread between groups behind shrunken means is that at which the weighted squares about the common mean equal k - 1',
    '(Morris 1983). A forecast holds the interval of every model of ageing that the data do not rule out; its chance is that of',
    'a mean below 80 % of that at the first age. "detectable" is the change between first and last age found with power 0.8.',
    '',
    'With --json: one object per line, each with its kind; strengths in MPa, probabilities 0 to 1, unrounded.',
  ],
  async run({ io, values, json }) {
    const options = optionsOf(values)
    const table = textOption(values, 'table')
    const { findingsOfArchive, findingsOfTable } = await import('#engine/findings/findings.ts')
    let lines: Iterable<FindingLine>
    if (table === undefined) lines = await findingsOfArchive(archiveOf(values), programName, options, groupText)
    else {
      const found = await findingsOfTable(table, options)
      for (const { line, why } of found.leftOut) {
        const text = `${table}, line ${line}: ${why}; the row was left out.`
        if (json) await io.out(jsonLine({ kind: 'note', about: 'table', text }))
        io.err(`${text}\n`)
      }
      lines = found.lines
    }
    const text = json ? linesInJson(lines) : linesInWords(lines, options)
    for (const one of text) if (!(await io.out(one))) break
    return 0
  },
}

function* linesInJson(lines: Iterable<FindingLine>): Generator<string> {
  for (const line of lines) yield jsonLine(printed(line))
}

/** What the findings rest on comes before them, and that nobody measured them before that. */
function* linesInWords(lines: Iterable<FindingLine>, options: FindingsOptions): Generator<string> {
  let isSaid = false
  for (const line of lines) {
    if (!isSaid && !(line.kind === 'note' && line.about === 'results')) {
      yield `${plainText(basisText(options))}\n`
      isSaid = true
    }
    yield `${plainText(findingText(line))}\n`
  }
}

/** A line as it is printed: reasons in words instead of codes. */
function printed(line: FindingLine): object {
  if (line.kind === 'note')
    return {
      kind: line.kind,
      about: line.about,
      text: plainText(noteText(line)),
      group: line.group,
      ageMonths: line.ageMonths,
    }
  if (line.kind !== 'ageing-model') return line
  return { ...line, failed: line.failed === null ? null : failureWords[line.failed] }
}

function optionsOf(values: CommandValues) {
  const only = textOption(values, 'only')
    ?.split(',')
    .map((word) => {
      const kind = findingKind.safeParse(word.trim())
      if (kind.success) return kind.data
      throw new UsageError(`--only names "${word}", which is none of ${findingKind.options.join(', ')}.`)
    })
  return findingsOptions.parse({
    woodFailure: wordOption(values, 'wood-failure', woodFailureTreatment.options),
    limitPercent: numberOption(values, 'limit', { above: 0, to: 100 }),
    adjustFactor: numberOption(values, 'adjust', { from: -largestFactor, to: largestFactor }),
    confidence: numberOption(values, 'confidence', probability),
    distribution: wordOption(values, 'distribution', fittedDistribution.options) ?? null,
    toleranceConfidence: numberOption(values, 'tolerance-confidence', probability),
    toleranceContent: numberOption(values, 'tolerance-content', probability),
    reference: textOption(values, 'reference') ?? null,
    marginPercent: numberOption(values, 'margin', { above: 0 }) ?? null,
    only: only ?? null,
    seed: numberOption(values, 'seed', { from: 0, whole: true }),
  })
}
