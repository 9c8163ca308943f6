import { expect, test } from 'vitest'
import { deriveCatalogue, lastOf } from '#archive/catalogue/deriveCatalogue.ts'
import { archiveInMemory } from '../storedStudy.ts'

test('follows a line of merges to its end, and a ring to where it closes', () => {
  const line = new Map([
    [1, 2],
    [2, 3],
  ])
  expect([1, 2, 3, 4].map((entryId) => lastOf(entryId, line))).toEqual([3, 3, 3, 4])
  const ring = new Map([...line, [3, 1] as const])
  expect(lastOf(1, ring)).toBe(3)
})

test('an entry goes by its newest name, and is found by all that it had', () => {
  const database = archiveInMemory()
  const put = database.prepare(
    `INSERT INTO catalogue_revision (entry_id, revision, recorded_at, by, reason, fields) VALUES (1, ?, '', '', '', ?)`,
  )
  for (const [i, name] of ['casein', 'Casein C1'].entries()) put.run(i + 1, JSON.stringify({ kind: 'adhesive', name }))
  expect(deriveCatalogue(database)).toEqual({
    current: [
      {
        ...{ entry_id: 1, revision_id: 2, kind: 'adhesive', name: 'Casein C1', name_key: 'casein c0011' },
        ...{ search: 'casein\ncasein c1', into_entry_id: 1 },
      },
    ],
    names: [
      { kind: 'adhesive', scope: 0, name_key: 'casein c0011', entry_id: 1 },
      { kind: 'adhesive', scope: 0, name_key: 'casein', entry_id: 1 },
    ],
  })
})
