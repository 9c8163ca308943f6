import { setImmediate } from 'node:timers/promises'
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { ByteSource } from '#acquisition/byteSource.ts'
import { benchEngine, serialChoice } from '#tests/fakes/benchEngine.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

/** A quiet source that takes a moment to open, as ports do, and says in a list that it is open. */
function quietSource(label: string, open: Set<string>): ByteSource {
  let wanted = false
  let attempt: Promise<void> = Promise.resolve()
  return {
    label,
    open() {
      wanted = true
      attempt = setImmediate().then(() => void (wanted && open.add(label)))
      return attempt
    },
    async close() {
      wanted = false
      await attempt
      open.delete(label)
    },
  }
}

it('leaves one device open where two are connected at once, that of the last word', async () => {
  const open = new Set<string>()
  let made = 0
  const openSource = () => quietSource(`device ${++made}`, open)
  const { engine } = await benchEngine(home.archive, {}, { openSource })
  await Promise.allSettled([engine.bench.connect(serialChoice), engine.bench.connect(serialChoice)])
  expect([...open]).toEqual(['device 2'])
  expect(engine.bench.state().connection).toMatchObject({ status: 'open', label: 'device 2' })
  await engine.close()
  expect(open.size).toBe(0)
})
