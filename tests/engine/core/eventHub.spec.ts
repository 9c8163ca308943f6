import { expect, it } from 'vitest'
import { createEventHub } from '#engine/core/eventHub.ts'

const trouble = { code: 'internal', message: 'm', hint: 'h' } as const

it('brings an event to every listener until it ends', () => {
  const hub = createEventHub()
  const heard: string[] = []
  const end = hub.subscribe('trouble', () => heard.push('first'))
  hub.subscribe('trouble', () => heard.push('second'))
  hub.emit('trouble', trouble)
  end()
  hub.emit('trouble', trouble)
  expect(heard).toEqual(['first', 'second', 'second'])
})

it('lets a broken listener disturb nobody and tells of it', () => {
  const hub = createEventHub()
  const heard: unknown[] = []
  hub.subscribe('task.progress', () => {
    throw new Error('broken page')
  })
  hub.subscribe('task.progress', (progress) => heard.push(progress.done))
  hub.subscribe('trouble', ({ message }) => heard.push(message))
  hub.emit('task.progress', { task: 'verify', done: 1, total: 2 })
  expect(heard).toEqual(['broken page', 1])
})

it('survives a listener that breaks on the trouble itself', () => {
  const hub = createEventHub()
  hub.subscribe('trouble', () => {
    throw new Error('broken')
  })
  expect(() => hub.emit('trouble', trouble)).not.toThrow()
})
