import { expect, it } from 'vitest'
import { createStore } from '#renderer/host/store.ts'

it('tells of every change until it is no longer wanted', () => {
  const store = createStore(1)
  const heard: number[] = []
  const end = store.subscribe(() => heard.push(store.get()))
  store.set(2)
  store.set(3)
  end()
  store.set(4)
  expect([heard, store.get()]).toEqual([[2, 3], 4])
})
