import type { TypedResultSummary, TypedSetAsideCause } from '#contract/specimens/typedResult.ts'
import { quantitiesIn } from '../units/quantities.ts'

type Sourced = Pick<TypedResultSummary, 'source' | 'row' | 'column' | 'file' | 'resolutionN' | 'readBy'>

/** That a result has no curve, short, for a list: where it comes from stands beside it. */
export const peakOnlyMark = 'peak only'

/** How many digits of the hash of a file tell it from another to the eye. */
const shownDigits = 12

/**
 * Where a result without a curve comes from: "peak only, from blocks.xlsx (3f2a9c11d0b4, row 7, column 3)", or who read which
 * dial. `force` writes the smallest step of the dial.
 */
export function typedSourceWords(result: Sourced, force: (valueN: number) => string): string {
  if (result.source === 'dial') {
    const step = result.resolutionN === null ? '' : ` in steps of ${force(result.resolutionN)}`
    return `${peakOnlyMark}, read from a dial${step}${result.readBy === '' ? '' : ` by ${result.readBy}`}`
  }
  const { file, row, column } = result
  const place = [file === null ? null : file.fileSha256.slice(0, shownDigits), row === null ? null : `row ${row}`]
  const across = column === null ? null : `column ${column}`
  const where = [...place, across].filter((part) => part !== null).join(', ')
  return `${peakOnlyMark}, from ${file?.fileName ?? 'a file'} (${where})`
}

/** What a result without a curve cannot say, wherever one is shown at length. */
export const peakOnlyMeaning =
  'There is no curve behind it and no calibration with a verified range: the number stands as it was written.'

/** The words by which a list finds a result without a curve: all that says where it comes from, with the step in either unit. */
export function typedSourceToFind(result: Sourced): string {
  const source = [quantitiesIn('SI'), quantitiesIn('US')].map(({ force }) => typedSourceWords(result, force.text))
  return `${source.join(' ')} ${result.source === 'import' ? 'imported' : ''}`
}

/** What a result without a curve that is set aside says of its block, or those of a whole file of theirs, after "was" or "were". */
export function typedSetAsideChoice(cause: TypedSetAsideCause, of: TypedResultSummary['source'] | 'file'): string {
  if (cause === 'other') return 'broken all the same'
  return of === 'file' ? 'others, or none' : 'another one'
}

/** What becomes of a block, or of those of a whole file, when its result without a curve is set aside for a cause. */
export function typedSetAsideMeaning(cause: TypedSetAsideCause, of: TypedResultSummary['source'] | 'file'): string {
  if (of === 'file')
    return cause === 'other'
      ? 'The blocks were broken: none of them comes back to the shelf.'
      : 'A wrong file or a wrong mapping: blocks that were here before it wait for the press again, those that came with it do not. It can be brought in anew.'
  if (cause === 'other') return 'The block was broken and does not come back to the shelf, though nothing of it counts.'
  return of === 'dial'
    ? 'Another block was broken: this one waits for the press again.'
    : 'Another block was broken: this one waits for the press again if it was here before the file.'
}

/** Who set a result without a curve aside and why. */
export function typedSetAsideWords({ by, reason, cause }: NonNullable<TypedResultSummary['setAside']>): string {
  return `Set aside by ${by}: ${cause === 'wrong-block' ? 'of another block; ' : ''}${reason}`
}
