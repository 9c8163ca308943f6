import { expect, it } from 'vitest'
import { typefacesLoaded } from '#renderer/theme/typefacesLoaded.ts'

it('waits for the last typeface, and does not fail where one cannot be had', async () => {
  let arrive = () => {}
  const late = { load: () => new Promise<FontFace>((resolve) => (arrive = () => resolve({} as FontFace))) }
  const lost = { load: () => Promise.reject(new Error('not found')) }
  let ready = false
  const loaded = typefacesLoaded([lost, late]).then(() => (ready = true))
  await new Promise((resolve) => setImmediate(resolve))
  expect(ready).toBe(false)
  arrive()
  await loaded
  expect(ready).toBe(true)
})
