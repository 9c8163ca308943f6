import { expect, it } from 'vitest'
import type { TaskName } from '#contract/tasks.ts'
import { createLongTasks } from '#engine/core/longTask.ts'

const untilAborted = (signal: AbortSignal) =>
  new Promise<never>((_, reject) => signal.addEventListener('abort', () => reject(signal.reason)))

it('hands on what the task gives', async () => {
  expect(await createLongTasks().run('verify', async () => 7)).toBe(7)
})

it('stops a task by its name and says that it was stopped', async () => {
  const tasks = createLongTasks()
  const running = tasks.run('verify', untilAborted)
  expect([tasks.isRunning('verify'), tasks.isRunning('demo')]).toEqual([true, false])
  expect(tasks.cancel('demo')).toBe(false)
  expect(tasks.cancel('verify')).toBe(true)
  await expect(running).rejects.toMatchObject({ code: 'cancelled' })
  expect(tasks.cancel('verify')).toBe(false)
  expect(tasks.isRunning('verify')).toBe(false)
})

it('runs one task of a name at a time', async () => {
  const tasks = createLongTasks()
  const first = tasks.run('verify', untilAborted)
  await expect(tasks.run('verify', async () => 1)).rejects.toMatchObject({ code: 'conflict' })
  tasks.cancelAll()
  await expect(first).rejects.toMatchObject({ code: 'cancelled' })
  expect(await tasks.run('verify', async () => 2)).toBe(2)
})

it('lets the task speak for itself when it fails', async () => {
  await expect(
    createLongTasks().run('demo', async () => {
      throw new Error('no room')
    }),
  ).rejects.toThrow('no room')
})

it.each<[TaskName, string]>([
  ['reevaluation', 'Evaluating breaks again is under way already.'],
  ['comparison', 'Comparing curves is under way already.'],
  ['verify', 'Checking the archive is under way already.'],
  ['demo', 'Filling the demo is under way already.'],
])('says in plain words what runs already: %s', async (task, message) => {
  const tasks = createLongTasks()
  const first = tasks.run(task, untilAborted)
  await expect(tasks.run(task, async () => 1)).rejects.toMatchObject({ code: 'conflict', message })
  tasks.cancelAll()
  await expect(first).rejects.toMatchObject({ code: 'cancelled' })
})

it('runs in turn what is asked for in turn, whatever becomes of one', async () => {
  const tasks = createLongTasks()
  const told: string[] = []
  const first = tasks.runInTurn('findings', async (signal) => {
    told.push('first')
    return untilAborted(signal)
  })
  const second = tasks.runInTurn('findings', async () => void told.push('second'))
  const other = tasks.runInTurn('climate', async () => void told.push('another task'))
  await other
  expect(told).toEqual(['first', 'another task'])
  tasks.cancel('findings')
  await expect(first).rejects.toMatchObject({ code: 'cancelled' })
  await second
  expect(told).toEqual(['first', 'another task', 'second'])
})
