import type { ImportFate, ImportSummary } from '#contract/specimens/importedResult.ts'
import type { ImportRunSummary } from '#contract/specimens/typedResult.ts'
import { countOf, ofWords } from '../../units/counts.ts'
import { writeCount } from '../../units/numbers.ts'
import { instantWords } from '../../units/times.ts'

/** What a table came to, or would come to, in a sentence or two. */
export function outcomeWords({ new: fresh, alreadyThere, rejected, emptyRows, dryRun }: ImportSummary): string {
  const rest = [
    alreadyThere === 0 ? '' : `${countOf(alreadyThere, 'block')} ${alreadyThere === 1 ? 'is' : 'are'} there already.`,
    rejected === 0 ? '' : `${countOf(rejected, 'block')} cannot be taken, for the reasons below.`,
    emptyRows === 0 ? '' : `${countOf(emptyRows, 'row')} ${emptyRows === 1 ? 'holds' : 'hold'} nothing.`,
  ]
  return [firstWords(fresh, alreadyThere, dryRun), ...rest].filter((part) => part !== '').join(' ')
}

function firstWords(fresh: number, alreadyThere: number, dryRun: boolean): string {
  if (fresh === 0) {
    const why = alreadyThere === 0 ? '' : ', for the archive has all that could be read'
    return dryRun ? `Nothing would be added${why}.` : `Nothing was added${why}.`
  }
  return dryRun
    ? `${countOf(fresh, 'block')} would be added; nothing is stored yet.`
    : `${countOf(fresh, 'block')} ${fresh === 1 ? 'was' : 'were'} added.`
}

const fateNames: Readonly<Record<ImportFate['fate'], string>> = {
  new: 'new',
  'already-there': 'there already',
  rejected: 'rejected',
}

/** What became of a block, in two words for a table. */
export function fateWords(fate: ImportFate['fate']): string {
  return fateNames[fate]
}

/** What became of a block, as a sentence; of one that is new, what it becomes. */
export function fateSentence({ fate, reason, number, row }: ImportFate, dryRun: boolean): string {
  if (fate !== 'new') return reason ?? `Row ${row}.`
  const own = number === null ? 'a specimen with a number of ours' : `specimen ${number}`
  const made = dryRun ? `Becomes ${own}.` : `Became ${own}.`
  return reason === null ? made : `${made} ${reason}`
}

/** How an earlier import is told from the others: "blocks.xlsx, 30 Nov 2026, 14:05". */
export function importRunName({ fileName, recordedAt }: Pick<ImportRunSummary, 'fileName' | 'recordedAt'>): string {
  return `${fileName}, ${instantWords(recordedAt)}`
}

/** How many results of an import count. */
export function importUseWords({ results, inUse }: Pick<ImportRunSummary, 'results' | 'inUse'>): string {
  if (inUse === results) return `${countOf(results, 'result')}, in use`
  return inUse === 0
    ? `${countOf(results, 'result')}, set aside`
    : `${writeCount(inUse)} of ${countOf(results, 'result')} in use`
}

/** That only the first fates are listed, all being counted. */
export function someFatesListed(listed: number, all: number): string {
  return `The first ${ofWords(listed, all)} are listed; all are counted.`
}
