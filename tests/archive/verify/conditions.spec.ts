import { expect, test } from 'vitest'
import { migrations } from '#archive/core/migrate.ts'
import { knownSchema } from '#archive/core/schema/knownSchema.ts'
import { conditionsOf } from '#archive/verify/conditions.ts'

test('takes every condition out of the text of a table, brackets and quotes and all', () => {
  expect(
    conditionsOf(`CREATE TABLE shelf (a TEXT CHECK (a <> ')('), b INTEGER CHECK (b IN (0,
      1)), CHECK ((a = 'it''s (') = (b = 1))) STRICT`),
  ).toEqual(["a <> ')('", 'b IN (0, 1)', "(a = 'it''s (') = (b = 1)"])
})

test('finds as many conditions in the tables of the program as they are written with', () => {
  for (const { name, sql } of knownSchema(migrations, migrations.length))
    if (sql !== null) expect([name, conditionsOf(sql).length]).toEqual([name, (sql.match(/CHECK/g) ?? []).length])
})

test('throws RangeError for half a text', () => {
  expect(() => conditionsOf('a TEXT CHECK (a IN (1, 2)')).toThrow(RangeError)
})
