import type { Quantities } from '#words/units/quantities.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'
import type { UnitFields } from '../../../parts/forms/typedTexts.ts'
import type { CaliperBlock } from './CaliperRow.tsx'

/** Blocks of no study as typed. */
export type OwnBlockTexts = {
  count: string
  /** One a line; none: they get short numbers. */
  numbers: string
  adhesive: string
  jointType: string
  exposure: string
  bondLineGapMm: string
  wood: string
  board: string
}
export type OwnBlockErrors = Partial<Record<keyof OwnBlockTexts, string>>

export const emptyOwnBlocks: OwnBlockTexts = {
  ...{ count: '', numbers: '', adhesive: '', jointType: '', exposure: '', bondLineGapMm: '0', wood: '', board: '' },
}
export const ownBlockUnits: UnitFields<keyof OwnBlockTexts> = { bondLineGapMm: ({ length }) => length }

const mostBlocks = 500

/** The numbers that are written on the blocks, in their order. */
function numbersIn({ numbers }: OwnBlockTexts): string[] {
  return numbers
    .split(/[\n;]/)
    .map((one) => one.trim())
    .filter((one) => one !== '')
}

/** How many blocks somebody says there are; null: no number of blocks that anybody glues by hand. */
function countIn({ count }: OwnBlockTexts): number | null {
  const typed = Number(count)
  return Number.isInteger(typed) && typed > 0 && typed <= mostBlocks ? typed : null
}

/** The rows of the table of sizes: one for each number, or as many as there are blocks. */
export function ownRows(texts: OwnBlockTexts): CaliperBlock[] {
  const numbers = numbersIn(texts)
  const count = Math.max(numbers.length, countIn(texts) ?? 0)
  const words = [texts.adhesive, texts.exposure].filter((one) => one !== '').join(' · ')
  return Array.from({ length: count }, (_, at) => ({ key: `own${at}`, number: numbers[at] ?? '', words }))
}

/** What blocks of no study have in common, or one clear sentence for each field that cannot be. */
export function readOwnBlocks(texts: OwnBlockTexts, { length }: Quantities) {
  const errors: OwnBlockErrors = {}
  const numbers = numbersIn(texts)
  if (texts.adhesive.trim() === '') errors.adhesive = 'Write which adhesive these blocks were glued with.'
  const count = texts.count.trim() === '' ? numbers.length : countIn(texts)
  if (count === null || count === 0) errors.count = `Write how many blocks there are, ${mostBlocks} at most.`
  const twice = numbers.find((one, at) => numbers.indexOf(one) !== at)
  if (twice !== undefined) errors.numbers = `${twice} is written twice.`
  const gap = readQuantity(texts.bondLineGapMm, length, 'the gap of the bond line')
  if ('error' in gap) errors.bondLineGapMm = gap.error
  const common = {
    ...{ adhesive: texts.adhesive.trim(), jointType: texts.jointType, exposure: texts.exposure },
    ...{ wood: texts.wood, board: texts.board, bondLineGapMm: 'error' in gap ? null : gap.stored },
  }
  return { common, errors: Object.keys(errors).length === 0 ? null : errors }
}
