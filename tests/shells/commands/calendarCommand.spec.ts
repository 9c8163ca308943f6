import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import ICAL from 'ical.js'
import { expect, it } from 'vitest'
import { openArchive } from '#archive/openArchive.ts'
import { commands } from '#shells/commands/commands.ts'
import { archiveFileOf, pulledStudy } from '#tests/archive/pulledStudy.ts'
import { temporaryFolder } from '#tests/archive/storedStudy.ts'
import { runWords } from '#tests/fakes/commandRun.ts'

const eventsIn = (text: string) =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one))
const calendar = (...words: string[]) => runWords(commands, ['calendar', ...words])

it('writes one event a pull, as another program reads them', async () => {
  const archive = archiveFileOf((database) => void pulledStudy(database))
  const file = join(temporaryFolder(), 'pulls.ics')
  const { code, lines } = await calendar('--archive', archive, '--study', '1', '--out', file, '--json')
  expect(code).toBe(0)
  expect(lines).toEqual([{ events: 3, file }])
  const days = eventsIn(await readFile(file, 'utf8')).map((event) => event.startDate.toString())
  expect(days).toEqual(['2030-08-31', '2031-02-28', '2031-08-31'])
  expect((await calendar('--archive', archive, '--study', '1', '--out', file)).out).toMatch(/^3 pulls: /)
})

it('writes the same again where nothing changed, and updates the event of a pull that is moved', async () => {
  const archive = archiveFileOf((database) => void pulledStudy(database))
  const exported = async () => {
    const file = join(temporaryFolder(), 'pulls.ics')
    await calendar('--archive', archive, '--study', '1', '--out', file)
    return (await readFile(file, 'utf8')).replace(/^DTSTAMP:.*$/gm, '')
  }
  const before = await exported()
  expect(await exported()).toBe(before)
  const moved = await openArchive({ path: archive, program: 'test' })
  await moved.addPullDecision({
    ...{ recordedAt: '2030-12-01T10:00:00.000Z', by: 'bench', reason: 'the press is away', studyId: 1 },
    ...{ gluedOn: '2030-08-31', ageMonths: 6, kind: 'moved', dueOn: '2031-03-04', blocksPerSeries: null },
  })
  await moved.close()
  const [was, is] = [before, await exported()].map(eventsIn)
  expect(is!.map(({ uid }) => uid)).toEqual(was!.map(({ uid }) => uid))
  expect(is!.map(({ startDate }) => startDate.toString())).toEqual(['2030-08-31', '2031-03-04', '2031-08-31'])
  expect(is!.map(({ sequence }, index) => sequence - was![index]!.sequence)).toEqual([0, 1, 0])
})

it('says how it is written, and fails where there is no study', async () => {
  expect((await calendar('--study', '1')).err).toMatch(/--study and --out must be given/)
  const archive = archiveFileOf((database) => void pulledStudy(database))
  const { code, err } = await calendar('--archive', archive, '--study', '9', '--out', 'pulls.ics')
  expect([code, err]).toEqual([1, expect.stringContaining('no study 9')])
})
