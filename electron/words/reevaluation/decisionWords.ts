import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { countOf, ofWords } from '../units/counts.ts'
import { writeCount } from '../units/numbers.ts'
import { standingOf } from './standing.ts'

export type DecisionKind = 'adopted' | 'dropped'
export type DecisionDialogWords = { title: string; explains: string; button: string; common: readonly string[] }

const kept = 'The results before them stay in the archive.'

/** What a re-evaluation does or did; one that ended early says how far it came. */
export function titleWords(summary: ReevaluationSummary): string {
  const { breaks, evaluated, end } = summary
  if (standingOf(summary) === 'running') return `Evaluating ${countOf(breaks, 'break')} again`
  const early = end !== null && end.ending !== 'complete'
  return `${early ? `${ofWords(evaluated, breaks)} ${breaks === 1 ? 'break' : 'breaks'}` : countOf(breaks, 'break')} evaluated again`
}

/** What the results are worth as they stand, and what adopting them would mean. */
export function meaningWords(summary: ReevaluationSummary): string {
  const { evaluated, breaks } = summary
  const results = evaluated === 1 ? 'this result' : `all ${writeCount(evaluated)} results`
  const adopting = `Adopting puts ${results} in force by one recorded decision, which you can take back at any time. ${kept}`
  const soFar = `${ofWords(evaluated, breaks)}. The results so far do not count. ${adopting}`
  if (evaluated === 0) return `${nothingWords(summary)}, so there is nothing to adopt.`
  switch (standingOf(summary)) {
    case 'running':
    case 'nothing':
      return ''
    case 'waiting':
      return `These results do not count yet. ${adopting}`
    case 'adopted':
      return `These results count wherever the breaks are used, unless later ones were put in force. ${kept}`
    case 'dropped':
      return 'These results were looked at and do not count. They stay in the archive and can still be adopted.'
    case 'taken-out':
      return 'These results counted for a while and no longer do: those before them are in force again.'
    case 'cancelled':
      return `Somebody stopped it after ${soFar}`
    case 'cut-short':
      return `It ended early, after ${soFar}`
  }
}

function nothingWords({ end }: ReevaluationSummary): string {
  if (end?.ending === 'cancelled') return 'Somebody stopped it before a break was evaluated'
  if (end?.ending === 'cut-short') return 'It ended before a break was evaluated'
  return 'No break could be evaluated'
}

/** What one of the decisions, oldest first, did. */
export function decidedWords(decisions: ReevaluationSummary['decisions'], index: number): string {
  if (decisions[index]?.kind === 'adopted') return 'Adopted'
  return decisions[index - 1]?.kind === 'adopted' ? 'Taken out of force' : 'Not adopted'
}

/** The dialog that asks for a decision. */
export function dialogWords(kind: DecisionKind, summary: ReevaluationSummary): DecisionDialogWords {
  const wasAdopted = standingOf(summary) === 'adopted'
  if (kind === 'adopted')
    return {
      title: `Adopt the results of ${countOf(summary.evaluated, 'break')}`,
      explains: `They are in force as soon as you have signed. ${kept} You can take them out of force again at any time.`,
      button: 'Adopt',
      common: ['looked through the changes', 'better calibration', 'settings suit these specimens'],
    }
  return {
    title: wasAdopted ? 'Take out of force again' : 'Do not adopt',
    explains: wasAdopted
      ? 'The results that were in force before count again. These stay in the archive, and can be adopted once more.'
      : 'Nothing changes: the results in force stay. These are kept in the archive, and can still be adopted later.',
    button: wasAdopted ? 'Take out of force' : 'Do not adopt',
    common: wasAdopted ? ['adopted by mistake', 'wrong setting'] : ['setting does not suit', 'was only a trial'],
  }
}
