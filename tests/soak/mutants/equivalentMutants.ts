/** A mutant that says the same as its original, by the texts that the command prints. */
export type EquivalentMutant = {
  readonly file: string
  readonly original: string
  readonly changed: string
  /** Why no test can tell the two apart. */
  readonly reason: string
}

export const equivalentMutants: readonly EquivalentMutant[] = []
