import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import ICAL from 'ical.js'
import { expect, it } from 'vitest'
import { commands } from '#shells/commands/commands.ts'
import { archiveFileOf, pulledStudy } from '#tests/archive/pulledStudy.ts'
import { temporaryFolder } from '#tests/archive/storedStudy.ts'
import { runWords } from '#tests/fakes/commandRun.ts'

const calendar = (...words: string[]) => runWords(commands, ['calendar', ...words])

it('writes one event a pull, as another program reads them', async () => {
  const archive = archiveFileOf((database) => void pulledStudy(database))
  const file = join(temporaryFolder(), 'pulls.ics')
  const { code, lines } = await calendar('--archive', archive, '--study', '1', '--out', file, '--json')
  expect(code).toBe(0)
  expect(lines).toEqual([{ events: 3, file }])
  const events = new ICAL.Component(ICAL.parse(await readFile(file, 'utf8'))).getAllSubcomponents('vevent')
  const days = events.map((one) => new ICAL.Event(one).startDate.toString())
  expect(days).toEqual(['2030-08-31', '2031-02-28', '2031-08-31'])
  expect((await calendar('--archive', archive, '--study', '1', '--out', file)).out).toMatch(/^3 pulls: /)
})

it('says how it is written, and fails where there is no study', async () => {
  expect((await calendar('--study', '1')).err).toMatch(/--study and --out must be given/)
  const archive = archiveFileOf((database) => void pulledStudy(database))
  const { code, err } = await calendar('--archive', archive, '--study', '9', '--out', 'pulls.ics')
  expect([code, err]).toEqual([1, expect.stringContaining('no study 9')])
})
