import type { TroubleMessage } from '#contract/errors.ts'
import type { HeadFinding } from '#contract/keeping/archive.ts'
import { chainFindingWords } from './verifyWords.ts'

/** What is said at once of an archive that was opened and is not as it should be; null: it is. */
export function wrongAtOpening({
  chainFinding,
  openingTrouble,
}: {
  chainFinding: HeadFinding | null
  openingTrouble: TroubleMessage | null
}): TroubleMessage | null {
  if (chainFinding === null) return openingTrouble
  const chain = chainFindingWords(chainFinding)
  if (openingTrouble === null) return { code: 'archive-damaged', message: chain, hint: '' }
  return { ...openingTrouble, message: `${chain} ${openingTrouble.message}` }
}
