import { expect, test } from 'vitest'
import { procedures } from '#contract/procedures.ts'
import { progress, taskName } from '#contract/tasks.ts'

test('a task is one of a closed list, wherever it is named', () => {
  expect(taskName.options).toEqual([
    'verify',
    'rebuild',
    'demo',
    'comparison',
    'reevaluation',
    'findings',
    'allocation',
    'import',
    'specimens',
    'climate',
  ])
  expect(progress.safeParse({ task: 'archive.verify', done: 1, total: 2 }).success).toBe(false)
  expect(procedures['task.cancel'].input.safeParse({ task: 'archive.verify' }).success).toBe(false)
  expect(procedures['task.cancel'].input.parse({ task: 'verify' })).toEqual({ task: 'verify' })
})
