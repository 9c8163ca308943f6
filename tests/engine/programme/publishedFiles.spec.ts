import { chmod, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { machinePrinter, writeCalendar, writeLabels } from '#engine/programme/publishedFiles.ts'
import { archiveFileOf, pulledStudy } from '#tests/archive/pulledStudy.ts'
import { temporaryFolder } from '#tests/archive/storedStudy.ts'

const program = 'breakledger test'
const filled = () => ({ path: archiveFileOf((database) => void pulledStudy(database)), program })
const study = { choice: { kind: 'study', studyId: 1 } as const, sheet: { page: 'A4', grid: [5, 13] } as const }

describe('labels', () => {
  it('are written as a page for any browser where the file is called so', async () => {
    const file = join(temporaryFolder(), 'labels.html')
    const written = await writeLabels(filled(), study, file, { CHROMIUM_PATH: '/nowhere' })
    expect(written).toEqual({ labels: 11, pages: 1, file })
    const html = await readFile(file, 'utf8')
    expect(html.match(/font-weight="bold"/g)).toHaveLength(11)
    expect(html).toContain('End of the chain: ')
  })

  it.skipIf(process.platform === 'win32')('are printed by the Chromium that is named', async () => {
    const folder = temporaryFolder()
    const browser = join(folder, 'browser')
    await writeFile(
      browser,
      `#!/bin/sh\nfor word in "$@"; do case "$word" in --print-to-pdf=*) echo %PDF > "\${word#*=}";; esac; done\n`,
    )
    await chmod(browser, 0o755)
    const file = join(folder, 'labels.pdf')
    await writeLabels(filled(), { ...study, sheet: { page: 'Letter', sizeMm: [63.5, 38] } }, file, {
      CHROMIUM_PATH: browser,
    })
    expect(await readFile(file, 'utf8')).toBe('%PDF\n')
  })

  it('say what is missing where nothing prints', async () => {
    expect(machinePrinter({ CHROMIUM_PATH: '/nowhere' })).toBeNull()
    await expect(writeLabels(filled(), study, 'labels.pdf', { CHROMIUM_PATH: '/nowhere' })).rejects.toMatchObject({
      code: 'unsupported',
      hint: expect.stringContaining('.html'),
    })
  })

  it('leave the file as it was when they are stopped', async () => {
    const file = join(temporaryFolder(), 'labels.html')
    await writeFile(file, 'older')
    await expect(writeLabels(filled(), study, file, {}, AbortSignal.abort())).rejects.toMatchObject({
      code: 'cancelled',
      message: `Writing ${file} was stopped; what stood there before is as it was.`,
    })
    expect(await readFile(file, 'utf8')).toBe('older')
  })

  it('of nothing are refused', async () => {
    const none = { ...study, choice: { kind: 'numbers', first: 1, last: 1 } as const }
    await expect(writeLabels(filled(), none, 'labels.html', {})).rejects.toMatchObject({ code: 'not-found' })
  })
})

describe('a calendar', () => {
  it('written twice differs in DTSTAMP alone', async () => {
    const archive = filled()
    const file = join(temporaryFolder(), 'pulls.ics')
    const texts: string[] = []
    for (const writtenAt of ['2031-02-01T00:00:00.000Z', '2039-05-01T12:00:00.000Z']) {
      expect(await writeCalendar(archive, 1, file, writtenAt)).toEqual({ events: 3, file })
      texts.push(await readFile(file, 'utf8'))
    }
    expect(texts[0]).not.toBe(texts[1])
    expect(new Set(texts.map((text) => text.replace(/^DTSTAMP:.*$/gm, ''))).size).toBe(1)
  })

  it('of a study that is not there is refused', async () => {
    await expect(writeCalendar(filled(), 9, 'pulls.ics', '2031-02-01T00:00:00.000Z')).rejects.toMatchObject({
      code: 'not-found',
    })
  })
})
