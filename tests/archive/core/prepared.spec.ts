import { expect, it } from 'vitest'
import { prepared } from '#archive/core/prepared.ts'
import { archiveInMemory } from '../storedStudy.ts'

it('compiles a text once for each connection', () => {
  const [one, other] = [archiveInMemory(), archiveInMemory()]
  const statement = prepared<{ n: number }>(one, 'SELECT 1 AS n')
  expect(prepared(one, 'SELECT 1 AS n')).toBe(statement)
  expect(prepared(one, 'SELECT 2 AS n')).not.toBe(statement)
  expect(prepared(other, 'SELECT 1 AS n')).not.toBe(statement)
  expect(statement.get()).toEqual({ n: 1 })
})
