import { posix } from 'node:path'
import type { EquivalentMutant } from './equivalentMutants.ts'
import type { Mutation } from './mutations.ts'
import type { Trial } from './trial.ts'

/** What one file or folder comes to; `tried` is without the equivalent ones, which no test can catch. */
export type TrialFigures = {
  readonly source: string
  readonly tried: number
  readonly caught: number
  readonly equivalent: number
  /** "file:line: original -> mutant" */
  readonly survivors: readonly string[]
  /** Marks of this file that no survivor answers to. */
  readonly wrongMarks: readonly string[]
}

/** Counts a trial, with survivors that are marked as equivalent set apart. */
export function judgeTrial({ source, caught, survived }: Trial, marks: readonly EquivalentMutant[]): TrialFigures {
  const own = marks.filter(({ file }) => file === source)
  const fits = (mark: EquivalentMutant, { original, changed }: Mutation) =>
    mark.original === original && mark.changed === changed
  const survivors = survived.filter((mutation) => !own.some((mark) => fits(mark, mutation)))
  return {
    source,
    tried: caught.length + survivors.length,
    caught: caught.length,
    equivalent: survived.length - survivors.length,
    survivors: survivors.map(({ line, original, changed }) => `${source}:${line}: ${original} -> ${changed}`),
    wrongMarks: own
      .filter((mark) => !survived.some((mutation) => fits(mark, mutation)))
      .map(({ original, changed }) => `${source}: ${original} -> ${changed}`),
  }
}

/** The figures of each folder, with those of the files in it added up. */
export function totalsByFolder(
  files: readonly TrialFigures[],
): (Pick<TrialFigures, 'tried' | 'caught' | 'equivalent'> & { readonly folder: string })[] {
  return [...Map.groupBy(files, ({ source }) => posix.dirname(source))].map(([folder, inside]) => ({
    folder,
    tried: inside.reduce((sum, { tried }) => sum + tried, 0),
    caught: inside.reduce((sum, { caught }) => sum + caught, 0),
    equivalent: inside.reduce((sum, { equivalent }) => sum + equivalent, 0),
  }))
}
