import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { againstReference } from '#domain/findings/compare/againstReference.ts'
import { randomStudies, studiesCsv } from './dataSets.ts'

// Expected: R 4.2.2 with multcomp, by dunnettNumbers.R beside this file, on the same studies (`studiesCsv`).
type Reference = { t: number[]; p: number[] }
const script = new URL('./dunnettNumbers.R', import.meta.url).pathname
const kept = readFileSync(new URL('./dunnettNumbers.ndjson', import.meta.url), 'utf8')
const parsed = (text: string) =>
  text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Reference)
const studies = 200
/** R takes two seconds for each. */
const studiesLive = 5
const blocks = randomStudies(studies)

function compare(expected: readonly Reference[]): void {
  for (const [i, { t, p }] of expected.entries()) {
    const study = blocks.filter(({ set }) => set === i + 1)
    const groups = [...Map.groupBy(study, ({ group }) => group)].map(([group, all]) => ({
      group,
      values: Float64Array.from(all, ({ strength }) => strength),
    }))
    const found = againstReference(groups, groups[0]!.group, 0.95)
    expect(found).toHaveLength(t.length)
    for (const [k, one] of found.entries()) {
      expect(Math.abs(one.statistic! - t[k]!), `study ${i + 1}`).toBeLessThan(1e-6 * Math.max(Math.abs(t[k]!), 1e-3))
      expect(Math.abs(one.p! - p[k]!), `study ${i + 1}`).toBeLessThan(1e-4)
    }
  }
}

function multcompIsHere(): boolean {
  try {
    execFileSync('Rscript', ['-e', 'library(multcomp)'], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}

describe('comparisons of 200 random studies with their first group', () => {
  it('are those that multcomp printed', () => {
    const expected = parsed(kept)
    expect(expected).toHaveLength(studies)
    compare(expected)
  })

  it.runIf(multcompIsHere())('are those of the multcomp of this machine', () => {
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-dunnett-'))
    try {
      const file = join(folder, 'studies.csv')
      writeFileSync(file, studiesCsv(blocks.filter(({ set }) => set <= studiesLive)))
      compare(
        parsed(execFileSync('Rscript', [script, file], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] })),
      )
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})
