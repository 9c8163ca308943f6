/*
 * Mutates the rules of the domain, one at a time, and runs the spec that mirrors the file: what no test notices, no test holds.
 *
 * Mutated: numbers (small whole ones by 1, others by a tenth), comparisons (their boundary and their direction, equality) and
 * signs (+ and -, && and ||). Left out, because such a change says nothing about a rule:
 *   - types, imports and names: they are gone when the program runs
 *   - texts: what is in a template, what is joined to a string, what follows `throw`: sentences are held by their own tests
 *   - ++ and --: they only step a loop, and turned around it never ends
 *   - `>>> 1` and what it halves: a search that cuts elsewhere finds the same
 * 0 becomes 1 alone: `> -1` is `>= 0`, which is tried anyway. A number below 0.00001 is room for rounding: it becomes 0 and a thousand times itself, as a tenth of it is nothing.
 * Single mutants that say the same as their original are in mutants/equivalentMutants.ts, each with its reason.
 */
import { equivalentMutants } from './mutants/equivalentMutants.ts'
import { judgeTrial, type TrialFigures, totalsByFolder } from './mutants/figures.ts'
import { sourceFiles, specOf } from './mutants/mutantFiles.ts'
import { tryMutants } from './mutants/trial.ts'

const usualPlaces = ['electron/domain/signal', 'electron/domain/calibration']
const leastCaughtShare = 0.9

/** `npm run soak -- mutants [folder or file ...]`: prints what was caught and each survivor, false below 90 %. */
export async function soak(words: readonly string[]): Promise<boolean> {
  const files = sourceFiles(words.length === 0 ? usualPlaces : words)
  const width = Math.max(...files.map((file) => file.length))
  console.log(`${'file'.padEnd(width)}  tried  caught  survived  equivalent`)
  const all: TrialFigures[] = []
  for (const file of files) {
    const figures = judgeTrial(await tryMutants(file, specOf(file)), equivalentMutants)
    if (figures.tried === 0) continue
    all.push(figures)
    console.log(row(file.padEnd(width), figures))
  }
  console.log('')
  for (const { folder, ...figures } of totalsByFolder(all)) console.log(row(folder.padEnd(width), figures))
  const survivors = all.flatMap(({ survivors }) => survivors)
  console.log(survivors.length === 0 ? '\nNone survived.' : `\nSurvivors:\n${survivors.join('\n')}`)
  const wrongMarks = all.flatMap(({ wrongMarks }) => wrongMarks)
  if (wrongMarks.length > 0) console.log(`\nMarked as equivalent, but caught or not there:\n${wrongMarks.join('\n')}`)
  const tried = sum(all.map((figures) => figures.tried))
  const caught = sum(all.map((figures) => figures.caught))
  console.log(`\n${caught} of ${tried} caught (${((100 * caught) / tried).toFixed(1)} %)`)
  return wrongMarks.length === 0 && caught >= leastCaughtShare * tried
}

function row(
  name: string,
  { tried, caught, equivalent }: Pick<TrialFigures, 'tried' | 'caught' | 'equivalent'>,
): string {
  const cells = [String(tried).padStart(5), String(caught).padStart(6), String(tried - caught).padStart(8)]
  return `${name}  ${cells.join('  ')}  ${String(equivalent).padStart(10)}`
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
