import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { commands } from '#shells/commands/commands.ts'
import { archiveFileOf, pulledStudy } from '#tests/archive/pulledStudy.ts'
import { temporaryFolder } from '#tests/archive/storedStudy.ts'
import { runWords } from '#tests/fakes/commandRun.ts'

const labels = (...words: string[]) => runWords(commands, ['labels', ...words])

describe('the command labels', () => {
  it('prints how many labels stand on how many pages', async () => {
    const archive = archiveFileOf((database) => void pulledStudy(database))
    const file = join(temporaryFolder(), 'sheet.html')
    const asked = ['--archive', archive, '--out', file]
    const { code, lines } = await labels(...asked, '--study', '1', '--sheet', '2x4', '--json')
    expect(code).toBe(0)
    expect(lines).toEqual([{ labels: 11, pages: 2, file }])
    const said = await labels(...asked, '--numbers', '1-20', '--size', '63.5x38', '--page', 'Letter')
    expect(said.out).toMatch(/^19 labels on 2 pages: /)
  })

  it.each([
    [['--study', '1'], /--out must be given/],
    [['--out', 'a.pdf'], /One of --study and --numbers/],
    [['--out', 'a.pdf', '--study', '1', '--numbers', '1-2'], /One of --study and --numbers/],
    [['--out', 'a.pdf', '--numbers', '20-1'], /--numbers must be two/],
    [['--out', 'a.pdf', '--numbers', '1-9999999'], /not more than 50000/],
    [['--out', 'a.pdf', '--numbers', 'a-b'], /--numbers must be two/],
    [['--out', 'a.pdf', '--study', '1', '--sheet', '5'], /COLUMNSxROWS/],
    [['--out', 'a.pdf', '--study', '1', '--sheet', '0x5'], /COLUMNSxROWS/],
    [['--out', 'a.pdf', '--study', '1', '--size', '0x5'], /WIDTHxHEIGHT/],
    [['--out', 'a.pdf', '--study', '1', '--sheet', '5x5', '--size', '30x20'], /exclude/],
  ])('refuses %j', async (words, because) => {
    const { code, err } = await labels(...words)
    expect(code).toBe(2)
    expect(err).toMatch(because)
  })
})
