import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { slopesTogether } from '#domain/findings/ageing/slopesTogether.ts'
import { boardEffect } from '#domain/findings/boardEffect.ts'
import { chiSquareUpperTail } from '#domain/numbers/distributions/chiSquare.ts'
import { tQuantile } from '#domain/numbers/distributions/studentT.ts'
import { mixedCsv, mixedStudies } from './mixedSets.ts'

// Expected: R 4.2.2 with lme4 and pbkrtest, by mixedNumbers.R beside this file, on the same studies (`mixedCsv`). lme4 searches the ratio with an
// optimiser that stops at some 1e-7 of it, so that seven digits agree.
type Reference = Record<
  'board' | 'means' | 'errors' | 'ratio' | 'spread' | 'common' | 'error' | 'slopes' | 'df',
  number[]
>
const script = new URL('./mixedNumbers.R', import.meta.url).pathname
const kept = readFileSync(new URL('./mixedNumbers.ndjson', import.meta.url), 'utf8')
const studies = 200
/** R takes its time. */
const studiesLive = 20
const blocks = mixedStudies(studies)
const parsed = (text: string): Reference[] =>
  text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Reference)

function compare(set: number, { board, means, errors, ratio, spread, common, error, slopes, df }: Reference): void {
  const study = blocks.filter((one) => one.set === set)
  const near = (one: number, other: number, of = 1) =>
    expect(Math.abs(one - other), `study ${set}: ${one} against ${other}`).toBeLessThan(2e-6 * of)
  const first = study.filter(({ ageMonths }) => ageMonths === 0)
  const boards = boardEffect(first.map(({ group, board, strength }) => ({ group, board, strengthMPa: strength })))!
  near(boards.boardSdMPa, board[0]!)
  near(boards.blockSdMPa, board[1]!)
  boards.groups.forEach(({ meanMPa, standardErrorMPa }, i) => {
    near(meanMPa, means[i]!, 10)
    near(standardErrorMPa, errors[i]!)
  })
  near(boards.p, boards.boardSdMPa === 0 ? 1 : chiSquareUpperTail(ratio[0]!, 1) / 2)

  const groups = [...new Set(study.map(({ group }) => group))]
  const found = slopesTogether(
    groups.map((group) => ({
      group,
      blocks: study
        .filter((one) => one.group === group)
        .map(({ ageMonths, strength }) => ({ ageMonths, strengthMPa: strength })),
    })),
    0.95,
  )!
  near(found.spreadPercentPerYear, 100 * spread[0]!, 100)
  near(found.blockSdPercent, 100 * spread[1]!, 100)
  near(found.commonPercentPerYear, 100 * Math.expm1(common[0]!), 100)
  // No fewer than one, and no more than the blocks leave.
  const half = -tQuantile(0.025, Math.min(Math.max(df[0]!, 1), study.length - groups.length - 1)) * error[0]!
  near(found.commonLowPercentPerYear, 100 * Math.expm1(common[0]! - half), 1000)
  found.series.forEach(({ percentPerYear }, i) => {
    near(percentPerYear, 100 * Math.expm1(slopes[i]!), 100)
  })
}

function lme4IsHere(): boolean {
  try {
    execFileSync('Rscript', ['-e', 'library(lme4); library(pbkrtest)'], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}

describe('boards and slopes as random effects, of 200 random studies', () => {
  it('are those that lme4 printed', () => {
    const expected = parsed(kept)
    expect(expected).toHaveLength(studies)
    expected.forEach((reference, set) => {
      compare(set, reference)
    })
  })

  it.runIf(lme4IsHere())('are those of the lme4 of this machine', () => {
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-mixed-'))
    try {
      const file = join(folder, 'studies.csv')
      writeFileSync(file, mixedCsv(blocks.filter(({ set }) => set < studiesLive)))
      parsed(execFileSync('Rscript', [script, file], { encoding: 'utf8' })).forEach((reference, set) => {
        compare(set, reference)
      })
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})
