import type { BreakSummary } from '#contract/breaks/break.ts'
import { isSimulated, simulatedMark } from '../keeping/demoWords.ts'
import { resultsWords } from '../specimens/resultsWords.ts'
import { overruledWords, setAsideWords } from './decisionWords.ts'
import { outcomeWord } from './outcomeWords.ts'

type Labelled = Pick<
  BreakSummary,
  | 'breakId'
  | 'number'
  | 'outcome'
  | 'ending'
  | 'setAside'
  | 'setAsideCause'
  | 'overruled'
  | 'resultsOfSpecimen'
  | 'demo'
  | 'simulated'
>

/** The heading of a break: "P-17 broke"; a break without a specimen is named by its own number. */
export function breakTitle(
  summary: Pick<BreakSummary, 'breakId' | 'number' | 'outcome' | 'ending' | 'setAside'>,
): string {
  const { breakId, number } = summary
  return number === null
    ? `Break ${breakId}, no specimen: ${outcomeWord(summary)}`
    : `${number} ${outcomeWord(summary)}`
}

/** How a row of the list of breaks is read out: with the reason where a person set the break aside or overruled its peak. */
export function breakRowLabel(row: Labelled): string {
  const { breakId, number, setAside, overruled } = row
  const words = [
    `break ${breakId}`,
    number ?? 'no specimen',
    isSimulated(row) ? simulatedMark : null,
    setAside === null ? outcomeWord(row) : `set aside: ${setAsideWords(row)}`,
    resultsWords(row.resultsOfSpecimen),
    overruled === null ? null : overruledWords(overruled),
  ]
  return words.filter((word) => word !== null).join(', ')
}
