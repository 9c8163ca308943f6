import { expect, it } from 'vitest'
import { openArchive } from '#archive/openArchive.ts'
import { createLongTasks } from '#engine/core/longTask.ts'
import { calendarOfStudy, pullHandlers } from '#engine/programme/pullHandlers.ts'
import { archiveFileOf, pulledStudy } from '#tests/archive/pulledStudy.ts'
import { storeStudy } from '#tests/archive/storedProgramme.ts'
import { standIn } from '#tests/fakes/time/standIn.ts'

async function handlersOn(instant: string) {
  const path = archiveFileOf((database) => {
    pulledStudy(database)
    storeStudy(database)
  })
  const archive = await openArchive({ path, program: 'breakledger test', mode: 'write' })
  const tasks = createLongTasks()
  return { archive, tasks, handlers: pullHandlers({ archive, tasks, clock: { instant: () => instant } } as never) }
}

it('lists what is due, decides on it, and writes it as a calendar', async () => {
  const { archive, handlers } = await handlersOn('2031-02-20T10:00:00.000Z')
  try {
    const states = async () => (await handlers['pulls.list']({ studyId: null })).pulls.map(({ state }) => state)
    expect(await states()).toEqual(['done', 'due', 'planned'])
    const named = { studyId: 1, gluedOn: '2030-08-31', ageMonths: 6, dueOn: null, blocksPerSeries: null }
    await handlers['pulls.decide']({ ...named, kind: 'skipped', by: 'bench', reason: 'store closed' })
    expect(await states()).toEqual(['done', 'skipped', 'planned'])
    const { events, text } = await handlers['pulls.calendar']({ studyId: 1 })
    expect([events, text.match(/STATUS:CANCELLED/g)]).toEqual([3, ['STATUS:CANCELLED']])
    expect(await handlers['pulls.blocks']({ pulls: [{ studyId: 1, gluedOn: '2030-08-31', ageMonths: 6 }] })).toEqual([
      [expect.objectContaining({ adhesive: 'casein C1', blocks: 2 })],
    ])
    const [stock] = await handlers['pulls.stock']({ studyId: 1 })
    expect(stock).toMatchObject({ adhesive: 'casein C1', free: 4 })
  } finally {
    await archive.close()
  }
})

it('calls no pull missed while the demo is being filled, and says that it is', async () => {
  const { archive, tasks, handlers } = await handlersOn('2034-02-20T10:00:00.000Z')
  const listed = async () => {
    const { filling, pulls } = await handlers['pulls.list']({ studyId: null })
    return { filling, states: pulls.map(({ state }) => state) }
  }
  try {
    expect(await listed()).toEqual({ filling: false, states: ['done', 'missed', 'missed'] })
    await tasks.run('demo', async () => expect(await listed()).toEqual({ filling: true, states: [] }))
    expect(await listed()).toMatchObject({ filling: false })
  } finally {
    await archive.close()
  }
})

it('says of a study without any day that it has no pull', async () => {
  const { archive } = await handlersOn('2031-02-20T10:00:00.000Z')
  try {
    await expect(calendarOfStudy(archive, 2, '2031-02-20T10:00:00.000Z')).rejects.toMatchObject({ code: 'not-found' })
  } finally {
    await archive.close()
  }
})

// The window opens on 14 February, which began an hour ago in Berlin and is to begin in New York
it.each([
  ['America/New_York', '2031-02-13', 'soon'],
  ['Europe/Berlin', '2031-02-14', 'due'],
])('counts by the day of a person in %s', async (zone, day, state) => {
  standIn(zone)
  const { archive, handlers } = await handlersOn('2031-02-14T00:00:00.000Z')
  try {
    const { today, pulls } = await handlers['pulls.list']({ studyId: null })
    expect([today, pulls[1]!.state]).toEqual([day, state])
  } finally {
    await archive.close()
  }
})
