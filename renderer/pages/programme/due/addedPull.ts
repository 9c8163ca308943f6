import type { InputOf } from '#contract/procedures.ts'

/** A pull to be added as it is typed; `gluedOn` '': of blocks that are not glued yet. */
export type AddedPullTexts = { gluedOn: string; age: string; dueOn: string; spares: string }

type AddedPull = Pick<InputOf<'pulls.decide'>, 'gluedOn' | 'ageMonths' | 'dueOn'> & { blocksPerSeries: number }
export type AddedPullErrors = Partial<Record<'age' | 'spares', string>>

/** The pull that the fields say, or one clear sentence for each that cannot be. */
export function readAddedPull({
  gluedOn,
  age,
  dueOn,
  spares,
}: AddedPullTexts): { pull: AddedPull; errors: null } | { pull: null; errors: AddedPullErrors } {
  const [ageMonths, blocksPerSeries] = [wholeNumber(age, 0), wholeNumber(spares, 1)]
  if (ageMonths === null || blocksPerSeries === null)
    return {
      pull: null,
      errors: {
        ...(ageMonths === null ? { age: 'Give the age in whole months.' } : {}),
        ...(blocksPerSeries === null ? { spares: 'Give a whole number, 1 or more.' } : {}),
      },
    }
  return { pull: { gluedOn: gluedOn || null, ageMonths, dueOn: dueOn || null, blocksPerSeries }, errors: null }
}

function wholeNumber(text: string, least: number): number | null {
  const number = Number(text.trim())
  return text.trim() !== '' && Number.isInteger(number) && number >= least ? number : null
}
