import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { findingKind } from '#contract/findings/lines.ts'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'
import { handbookGroups } from '../../domain/findings/knownStudies.ts'
import { findingKeys } from './findingKeys.ts'
import { aged, five, oddTables, plain, rows } from './oddTables.ts'

let folder = ''
let table = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'breakledger-findings-'))
  table = join(folder, 'table.csv')
  const rows = handbookGroups.flatMap(({ group, values }) => [...values].map((value) => `${group},${value}`))
  writeFileSync(table, `group,strength_MPa\n${rows.join('\n')}\n`)
})
afterAll(() => rmSync(folder, { recursive: true }))
const findings = (...words: string[]) => runWords(commands, ['findings', ...words])

describe('findings', () => {
  it('prints the numbers of the handbook for its table, one object a line', async () => {
    const { code, lines } = await findings('--table', table, '--json', '--only', 'means-test,letters')
    expect(code).toBe(0)
    // NIST/SEMATECH e-Handbook 7.4.7.1
    expect(lines.find(({ method }) => method === 'one-way')).toMatchObject({
      df1: 3,
      df2: 16,
      statistic: expect.closeTo(9.72384, 5),
    })
    expect(lines.filter(({ kind }) => kind === 'letters')).toHaveLength(3)
  })

  it('says in words what --json says in numbers', async () => {
    const { out } = await findings('--table', table, '--only', 'pair', '--seed', '3')
    expect(out).toMatch(/1 is weaker than 2 by 2\.380 MPa/)
    expect(out).toMatch(/^Intervals hold with 95 % confidence\. .*from seed 3\.\n/)
  })

  it('names a row that it left out, as a note and on stderr', async () => {
    const file = join(folder, 'odd.csv')
    writeFileSync(file, 'group,strength_MPa\nA,7\nA,x\nA,8\n')
    const { code, lines, err } = await findings('--table', file, '--json', '--only', 'group-summary')
    expect(code).toBe(0)
    expect(lines[0]).toMatchObject({ kind: 'note', about: 'table', text: expect.stringMatching(/line 3: .*left out/) })
    expect(lines[1]).toMatchObject({ kind: 'group-summary', n: 2 })
    expect(err).toMatch(/line 3/)
  })

  it('words a note and a reason, and prints no code', async () => {
    const file = join(folder, 'ages.csv')
    writeFileSync(file, 'group,strength_MPa,age_months\nA,7,0\nA,8,0\nA,7,6\nA,6,6\n')
    const { lines } = await findings('--table', file, '--json')
    expect(lines.find(({ kind }) => kind === 'note')).toMatchObject({ text: expect.stringMatching(/^A.*\.$/) })
    expect(lines.find(({ model }) => model === 'exponential-approach')).toMatchObject({
      failed: 'there are too few ages',
    })
  })

  it.each([
    [['--only', 'everything'], /--only names "everything"/],
    [['--confidence', '1'], /--confidence must be a number above 0 below 1/],
    [['--adjust', '1e300'], /--adjust must be a number/],
    [['--wood-failure', 'none'], /--wood-failure must be one of/],
  ])('refuses the command line %j', async (words, complaint) => {
    const { code, err } = await findings('--table', table, ...words)
    expect(code).toBe(2)
    expect(err).toMatch(complaint)
  })

  it('says that a table is missing', async () => {
    const { code, err } = await findings('--table', join(folder, 'none.csv'))
    expect(code).toBe(1)
    expect(err).toMatch(/there is no such file/)
  })
})

/** The lines about a table of these rows, below the header. */
async function of(header: string, rows: readonly string[], ...words: string[]) {
  const file = join(folder, 'given.csv')
  writeFileSync(file, `${header}\n${rows.join('\n')}\n`)
  const { code, lines } = await findings('--table', file, '--json', ...words)
  expect(code).toBe(0)
  return lines
}
describe('the lines of findings', () => {
  it('have the keys that whoever reads them relies on, each kind', async () => {
    const ages = [0, 6, 12, 24, 36]
    const study = ['A', 'B', 'C', 'D'].flatMap((group, g) =>
      ages.flatMap((age) =>
        [9, 9.3, 8.8, 9.1, 9.4, 14].map((value, i) => `${group},${value - g / 3 - (i * age) / 99},${age}`),
      ),
    )
    const lines = await of(aged, [...study, 'E,9,0'], '--reference', 'A', '--margin', '10')
    for (const kind of findingKind.options) {
      const found = lines.filter((line) => line.kind === kind)
      expect(found.length, kind).toBeGreaterThan(0)
      for (const line of found) expect(Object.keys(line).sort(), kind).toEqual(['kind', ...findingKeys[kind]!].sort())
    }
  })
})

describe('findings about an odd table', () => {
  it.each(oddTables)(
    'say of %s what it cannot show, and have null in place of a number',
    async (_what, header, given, words, note, line) => {
      const lines = await of(header, given, ...words)
      const notes = lines.filter(({ kind }) => kind === 'note')
      if (note === null) expect(notes).toEqual([])
      else expect(notes.map(({ text }) => text)).toContainEqual(expect.stringMatching(note))
      if (Object.keys(line).length === 0) expect(lines.filter(({ kind }) => kind !== 'note')).toEqual([])
      else expect(lines).toContainEqual(expect.objectContaining(line))
    },
  )

  it.each([
    ['a missing column', 'group,psi\nA,7\n', /the column strength_MPa is missing/],
    ['semicolons', 'group;strength_MPa\nA;7,5\n', /its columns are parted by ";"/],
    ['no row', 'group,strength_MPa\n', /no rows follow/],
    ['no readable row', 'group,strength_MPa\nA,"7,5"\n', /write a decimal point.*No row can be read/],
    ['nothing', '', /no header line/],
  ])('refuse %s as a whole, in a sentence', async (_what, text, complaint) => {
    const file = join(folder, 'refused.csv')
    writeFileSync(file, text)
    const { code, err, out } = await findings('--table', file, '--json')
    expect([code, out]).toEqual([1, ''])
    expect(err).toMatch(complaint)
  })

  it('take ten thousand rows of one group', async () => {
    const many = Array.from(
      { length: 10_000 },
      (_, i) => `A,${(8 + Math.sin(i) + (i % 17) / 9).toFixed(3)},${(i % 5) * 12}`,
    )
    const lines = await of(aged, many)
    expect(lines.filter(({ kind }) => kind === 'group-summary')).toHaveLength(5)
    expect(lines).toContainEqual(
      expect.objectContaining({ kind: 'trend', test: 'mann-kendall', p: expect.any(Number) }),
    )
    expect(lines.filter(({ kind }) => kind === 'forecast')).toHaveLength(3)
  })

  it('keep names of any kind apart', async () => {
    const names = ['__proto__', 'constructor', '"A", B', '漆', ' 7', 'toString']
    const lines = await of(
      plain,
      names.flatMap((name, i) =>
        rows(
          `"${name.replaceAll('"', '""')}"`,
          five.map((value) => value + i),
        ),
      ),
      '--only',
      'letters',
    )
    for (const { letters } of lines as { letters: Record<string, string> }[])
      expect(
        Object.keys(letters)
          .map((name) => name.trim())
          .sort(),
      ).toEqual(names.map((name) => name.trim()).sort())
  })

  it('are the same of strengths in another unit, times that', async () => {
    const values = [7.1, 7.9, 8.4, 6.6, 7.7, 12.5]
    const study = (factor: number) =>
      ['A', 'B', 'C', 'D'].flatMap((group, g) =>
        rows(
          group,
          values.map((value) => factor * (value + g / 4)),
          50,
        ),
      )
    const words = ['--reference', 'A', '--margin', '10', '--limit', '100']
    const [one, large, small] = [
      await of(plain, study(1), ...words),
      await of(plain, study(1e9), ...words),
      await of(plain, study(1e-9), ...words),
    ]
    expect(large).toHaveLength(one.length)
    for (const [i, line] of one.entries())
      for (const [key, value] of Object.entries(line)) {
        if (typeof value !== 'number') continue
        const factor = key.endsWith('MPa') ? 1e9 : 1
        if (['logLikelihood', 'aic', 'aicc'].includes(key)) continue
        const near = (other: unknown, by: number) =>
          expect(Math.abs((other as number) / by - value), `${line.kind} ${key}`).toBeLessThan(
            1e-6 * Math.max(Math.abs(value), 1e-6),
          )
        near(large[i]![key], factor)
        near(small[i]![key], 1 / factor)
      }
  })
})
