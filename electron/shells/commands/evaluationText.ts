// Held by tests/shells/commands/evaluateCommand.spec.ts.
import type { EvaluatedFile } from '#engine/breaks/evaluateCurveFile.ts'
import { courseWords, figureWords, rateWords } from '#words/breaks/courseWords.ts'
import { eventLine } from '#words/breaks/eventFigures.ts'
import { eventMeaning } from '#words/breaks/eventMeaning.ts'
import { outcomeWords } from '#words/breaks/outcomeWords.ts'
import { samplingBoundWords } from '#words/breaks/samplingBoundWords.ts'
import { zeroFoundWords } from '#words/breaks/zeroWords.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')

/** What a curve file says, for people: figures first, then what happened and what it may mean. */
export function evaluationText(file: string, { result, zero }: EvaluatedFile): string {
  const lines: string[] = []
  const add = (name: string, words: string) => lines.push(`  ${name.padEnd(13)} ${plainText(words)}\n`)
  if (result.outcome !== 'none') {
    add('peak', `${figureWords(result.peakN, 1, 'N')} at ${figureWords(result.peakTimeS, 4, 's')}`)
    add('loading rate', rateWords(result.loadingRateNPerS, result.course))
    add('sampling', samplingBoundWords({ boundN: result.samplingBoundN, percent: result.samplingBoundPercent }, force))
  }
  if (result.course !== null) for (const [name, words] of courseWords(result.course)) add(name, words)
  if (zero?.kind === 'rest') add('zero', zeroFoundWords(zero))
  add('samples', `${result.samples} at ${figureWords(result.sampleRateHz, 2, 'Hz')}, ${result.missingSamples} missing`)
  if (result.flags.length > 0) add('flags', result.flags.join(', '))
  for (const event of result.events) {
    add(event.kind, eventLine(event))
    add('', eventMeaning(event))
  }
  return `${file}: ${outcomeWords[result.outcome]}\n${lines.join('')}`
}
