import { plannedComparison, sampleSizeQuestion } from '#contract/programme/sampleSize.ts'
import { sampleSizeSentences } from '#words/programme/sampleSizeWords.ts'
import { plainText } from '#words/units/plainText.ts'
import { type Command, UsageError } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { numberOption, wordOption } from './optionValues.ts'

export const planCommand: Command = {
  name: 'plan',
  operands: '',
  summary: 'Says how many blocks a group a study needs, or what difference or power a number of blocks gives.',
  options: {
    groups: { type: 'string', value: 'K', help: 'how many groups are compared' },
    cv: { type: 'string', value: 'PERCENT', help: 'how much blocks of one group vary: coefficient of variation' },
    n: { type: 'string', value: 'N', help: 'blocks a group, 2 at least' },
    difference: { type: 'string', value: 'PERCENT', help: 'the difference to be found, of the mean' },
    power: { type: 'string', value: 'P', help: 'chance to find it, 0 to 1; 0.8 and 0.9 are usual' },
    confidence: { type: 'string', value: 'P', help: '0.95 without it' },
    comparison: { type: 'string', value: 'pair|any', help: 'pair without it' },
  },
  usesArchive: false,
  details: [
    'Give --groups, --cv and two of --n, --difference and --power; the third is found.',
    'pair: two groups by a two-sided t test; the number of groups plays no part. any: all groups by a one-way F test, the',
    'difference being that of the two outermost groups, all others midway.',
    '',
    'With --json: one object {comparison, groups, n, cvPercent, differencePercent, power, confidence}; n unrounded.',
  ],
  async run({ io, values, json }) {
    const groups = numberOption(values, 'groups', { from: 2, to: 10_000, whole: true })
    const cvPercent = numberOption(values, 'cv', { above: 0 })
    if (groups === undefined || cvPercent === undefined) throw new UsageError('--groups and --cv must be given.')
    const n = numberOption(values, 'n', { from: 2 }) ?? null
    const differencePercent = numberOption(values, 'difference', { above: 0 }) ?? null
    const power = numberOption(values, 'power', { above: 0, below: 1 }) ?? null
    if ([n, differencePercent, power].filter((value) => value === null).length !== 1)
      throw new UsageError('Two of --n, --difference and --power must be given; the third is found.')
    const { planSample } = await import('#engine/programme/planSample.ts')
    const plan = planSample(
      sampleSizeQuestion.parse({
        comparison: wordOption(values, 'comparison', plannedComparison.options) ?? 'pair',
        groups,
        cvPercent,
        confidence: numberOption(values, 'confidence', { above: 0, below: 1 }) ?? 0.95,
        n,
        differencePercent,
        power,
      }),
    )
    await io.out(json ? jsonLine(plan) : `${sampleSizeSentences(plan).map(plainText).join('\n')}\n`)
    return 0
  },
}
