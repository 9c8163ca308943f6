import { execFileSync, spawn, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'

const samples = join(import.meta.dirname, '../../../samples/sheets')
let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-import-'))
})
afterAll(() => rm(folder, { recursive: true, force: true }))

let files = 0
function written(text: string, ending = 'csv'): string {
  files += 1
  const path = join(folder, `table-${files}.${ending}`)
  writeFileSync(path, text)
  return path
}

const mapping = {
  layout: 'row-per-specimen',
  fields: {
    number: { column: 'Number' },
    adhesive: { column: 'Adhesive' },
    load: { column: 'Load', unit: 'lbf' },
    area: { value: 0.75, unit: 'in2' },
  },
}
const map = (change: object = {}) => written(JSON.stringify({ ...mapping, ...change }), 'json')
const run = (...words: string[]) => runWords(commands, ['import', '--json', ...words])
const at = (name: string) => join(folder, name)

describe('import', () => {
  it('proposes a mapping from the headings, which brings the table in as it stands', async () => {
    // A heading as sheet programs give it on, with a place to break the line that nobody sees
    const table = written('No;Glue;Fmax\u200b (kN);L (mm);B (mm)\n1;casein C1;4,8;30,2;19,9\nMean;;4,8;;\n')
    const proposed = await run(table, '--propose')
    expect(proposed.code).toBe(0)
    expect(proposed.lines).toMatchObject([
      { headerRow: 1, fields: { load: { column: 'Fmax\u200b (kN)', unit: 'kN' } } },
    ])
    const dry = await run(
      table,
      '--map',
      written(JSON.stringify(proposed.lines[0]), 'json'),
      '--archive',
      at('none.breakledger'),
      '--dry-run',
    )
    expect(dry.lines.at(-1)).toMatchObject({ new: 1, rejected: 1 })
  })

  it('names the colours of cells beside the mapping that it proposes, and in text each row once with its fate', async () => {
    const coloured = await runWords(commands, ['import', join(samples, 'wide-by-colour.xlsx'), '--propose'])
    expect(coloured.err).toMatch(/FFFF00 \(yellow\) in \d+ cells/)
    const table = written('Number,Adhesive,Load\nA-1,casein C1,abc\n')
    const dry = await runWords(commands, [
      'import',
      table,
      '--map',
      map(),
      '--archive',
      at('no.breakledger'),
      '--dry-run',
    ])
    expect(dry.out).toMatch(/^rejected: Row 2, column C \(Load\), load: “abc” is not a number[^\n]*\n0 would be new/)
  })

  const csv = 'Number,Adhesive,Load\nA-1,casein C1,450\n\nA-2,casein C1,abc\n,epoxy E4,500\n,epoxy E4,500\n'

  it('says every fate and what it came to; a dry run makes no archive, and the import makes one', async () => {
    const [table, fields, archive] = [written(csv), map(), at('new.breakledger')]
    const dry = await run(table, '--map', fields, '--archive', archive, '--dry-run')
    const fileSha256 = createHash('sha256').update(csv).digest('hex')
    const row = { column: null, specimenId: null, number: null, reason: null, fate: 'new' }
    expect(dry).toMatchObject({ code: 0, err: '' })
    expect(dry.lines).toEqual([
      { ...row, row: 2, number: 'A-1' },
      {
        ...{ ...row, row: 4, fate: 'rejected', number: 'A-2' },
        reason: 'Row 4, column C (Load), load: “abc” is not a number as people write one.',
      },
      { ...row, row: 5 },
      { ...row, row: 6 },
      { event: 'imported', new: 3, alreadyThere: 0, rejected: 1, emptyRows: 1, fileSha256, dryRun: true },
    ])
    expect(existsSync(archive)).toBe(false)
    const done = await run(table, '--map', fields, '--archive', archive)
    expect(done.code).toBe(0)
    expect(done.lines.map((line) => (line as { specimenId?: number }).specimenId)).toEqual([1, null, 2, 3, undefined])
    const again = await run(table, '--map', fields, '--archive', archive)
    expect(again.lines.at(-1)).toMatchObject({ new: 0, alreadyThere: 3, rejected: 1 })
    const verified = await runWords(commands, ['verify', '--archive', archive])
    expect(verified.code).toBe(0)
  })

  it('refuses a mapping that is none, a file that is not there, and a command line without a mapping', async () => {
    const archive = ['--archive', at('never.breakledger')]
    const unknown = await run(written(csv), '--map', map({ colour: 1 }), ...archive)
    expect(unknown).toMatchObject({ code: 1, lines: [] })
    expect(unknown.err).toContain('colour')
    expect((await run(at('gone.csv'), '--map', map(), ...archive)).err).toContain('there is no such file')
    expect((await run(at('.'), '--map', map(), ...archive)).err).toContain('this is a folder')
    // A device that gives bytes without end
    expect((await run('/dev/zero', '--map', map(), ...archive)).err).toContain('larger than 200 MB')
    expect((await run(written(csv), ...archive)).code).toBe(2)
    expect(existsSync(at('never.breakledger'))).toBe(false)
  })

  it('says that nothing was stored where it is stopped while it reads the file', async () => {
    const words = ['import', written(csv), '--map', map(), '--archive', at('never.breakledger')]
    const { code, err } = await runWords(commands, words, AbortSignal.abort())
    expect([code, err]).toEqual([1, 'The import was stopped; nothing of it was stored.\nImport again when it suits.\n'])
    expect(existsSync(at('never.breakledger'))).toBe(false)
  })

  it('leaves nothing half done when it is killed at any moment', async () => {
    const rows = Array.from({ length: 3000 }, (_, i) => `B-${i},casein C1,${400 + i}`)
    const [table, fields] = [written(`Number,Adhesive,Load\n${rows.join('\n')}\n`), map()]
    const archive = at('killed.breakledger')
    const command = join(import.meta.dirname, '../../../electron/shells/start/command.ts')
    // An archive that is there, so that something could be left in it
    await run(written('Number,Adhesive,Load\nfirst,casein C1,1\n'), '--map', fields, '--archive', archive)
    for (let kills = 0; kills < 3; kills++) {
      const child = spawn(process.execPath, [command, 'import', table, '--map', fields, '--archive', archive], {
        stdio: 'ignore',
      })
      const ended = new Promise((resolve) => child.once('exit', resolve))
      // As soon as the import writes, and a little later each time
      while (!existsSync(`${archive}-wal`) && child.exitCode === null) await new Promise((go) => setTimeout(go, 5))
      for (let turns = 0; turns < kills * 20; turns++) await new Promise((go) => setTimeout(go, 5))
      child.kill('SIGKILL')
      await ended
    }
    const after = await run(table, '--map', fields, '--archive', archive)
    const { new: fresh, alreadyThere } = after.lines.at(-1) as { new: number; alreadyThere: number }
    expect([fresh, alreadyThere]).toSatisfy(
      ([one, other]: [number, number]) => (one === 3000 && other === 0) || (one === 0 && other === 3000),
    )
    expect((await runWords(commands, ['verify', '--archive', archive])).code).toBe(0)
  })
})

describe('a wide sheet with wood failure by colour', () => {
  type Group = { n: number; meanMPa: number; sdMPa: number; woodFailureMeanPercent: number }

  it('gives the counts and means that openpyxl computes from the same file', async () => {
    const archive = at('wide.breakledger')
    const [sheet, fields] = [join(samples, 'wide-by-colour.xlsx'), join(samples, 'wide-by-colour.map.json')]
    const done = await run(sheet, '--map', fields, '--archive', archive)
    const expected: (Group & { adhesive: string; exposure: string })[] = openpyxlIsThere
      ? JSON.parse(execFileSync('python3', [join(samples, 'sheetStatistics.py')], { encoding: 'utf8' }))
      : JSON.parse(readFileSync(join(samples, 'wide-by-colour.expected.json'), 'utf8'))
    const blocks = expected.reduce((sum, { n }) => sum + n, 0)
    expect(done.lines.at(-1)).toMatchObject({ new: blocks, rejected: 0, emptyRows: 0 })
    const found = await runWords(commands, ['findings', '--only', 'group-summary', '--json', '--archive', archive])
    const groups = new Map((found.lines as (Group & { group: string })[]).map((line) => [line.group, line]))
    expect(groups.size).toBe(150)
    for (const { adhesive, exposure, n, meanMPa, sdMPa, woodFailureMeanPercent } of expected) {
      const [, group] = [...groups].find(([name]) => name.startsWith(`${adhesive},`) && name.includes(`, ${exposure}`))!
      expect(group.n).toBe(n)
      expect(group.meanMPa).toBeCloseTo(meanMPa, 9)
      expect(group.sdMPa).toBeCloseTo(sdMPa, 9)
      expect(group.woodFailureMeanPercent).toBeCloseTo(woodFailureMeanPercent, 9)
    }
  })
})

const openpyxlIsThere = spawnSync('python3', ['-c', 'import openpyxl']).status === 0
