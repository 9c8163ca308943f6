import { expect, it } from 'vitest'
import { Trouble } from '#contract/errors.ts'
import { openingTroubles } from '#engine/core/openingTroubles.ts'

const damaged = (message: string) => Promise.reject(new Trouble('archive-damaged', message, 'Go on with a backup.'))

it('gives what can be read, and has nothing to say then', async () => {
  const troubles = openingTroubles()
  expect(await troubles.orElse(Promise.resolve(7), 0, 'No number is known')).toBe(7)
  expect(troubles.asOne()).toBeNull()
})

it('goes on without what cannot be read, and says all of it and each cure once', async () => {
  const troubles = openingTroubles()
  expect(await troubles.orElse(damaged('a is gone.'), 0, 'No number is known')).toBe(0)
  await troubles.orElse(damaged('b is gone.'), '', 'No name is known')
  expect(troubles.asOne()).toEqual({
    code: 'archive-damaged',
    message: 'No number is known: a is gone. No name is known: b is gone.',
    hint: 'Go on with a backup.',
  })
})
