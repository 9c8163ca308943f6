import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'
import { handbookGroups } from '../../domain/findings/knownStudies.ts'

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
    expect((await findings('--table', table, '--only', 'pair')).out).toMatch(/1 is weaker than 2 by 2\.380 MPa/)
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
