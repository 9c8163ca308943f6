import type { NumberedSpecimen } from '#contract/programme/labelProcedures.ts'
import { dialFault, noSpecimenWords } from '#words/specimens/dialWords.ts'
import { strengthQuestion } from '#words/specimens/plausibleWords.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { stillToComeQuestion } from '#words/units/typedDay.ts'
import type { DialLine, ReadLine } from './dialLines.ts'

/** A line as the list shows it: with its specimen, and what is wrong or doubtful. `specimenId` null: not known yet, or none. */
export type JudgedLine = {
  line: number
  said: ReadLine | null
  specimenId: number | null
  strengthMPa: number | null
  error: string | null
  questions: string[]
}

/** What the archive says of the lines of a list, on a day; a number that is missing from `known` is still being asked for. */
export function judgeLines(
  lines: readonly DialLine[],
  known: ReadonlyMap<string, NumberedSpecimen>,
  quantities: Quantities,
  today: string,
): JudgedLine[] {
  const before = new Map<number, number>()
  return lines.map((one): JudgedLine => {
    const { line } = one
    const nothing = { line, said: null, specimenId: null, strengthMPa: null, error: null, questions: [] }
    if (one.kind === 'wrong') return { ...nothing, error: one.error }
    const { said } = one
    const numbered = known.get(said.number)
    if (numbered === undefined) return { ...nothing, said }
    const error = noSpecimenWords(said.number, numbered, quantities.length)
    if (numbered.found.kind !== 'specimen' || error !== null) return { ...nothing, said, error }
    const { specimenId } = numbered.found
    const strengthMPa = numbered.areaMm2 === null ? null : said.peakN / numbered.areaMm2
    const earlier = before.get(specimenId)
    if (earlier === undefined) before.set(specimenId, line)
    const questions = [
      earlier === undefined ? null : dialFault.twice(earlier),
      numbered.timesBroken > 0 ? dialFault.broke : null,
      strengthQuestion(strengthMPa, quantities.strength),
      stillToComeQuestion(said.brokenOn ?? '', today),
    ].filter((question) => question !== null)
    return { line, said, specimenId, strengthMPa, error: null, questions }
  })
}
