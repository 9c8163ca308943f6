import { expect, it } from 'vitest'
import * as z from 'zod'
import { procedures } from '#contract/procedures.ts'

type Schema = { type?: string; maxLength?: number; enum?: unknown; const?: unknown; format?: string }

/** Places of texts that may be of any length, as "weights[].name". */
function unlimitedTexts(schema: unknown, at = ''): string[] {
  if (typeof schema !== 'object' || schema === null) return []
  if (Array.isArray(schema)) return schema.flatMap((one) => unlimitedTexts(one, at))
  const { type, maxLength, enum: words, const: word, format } = schema as Schema
  if (type === 'string' && (maxLength ?? words ?? word ?? format) === undefined) return [at]
  return Object.entries(schema).flatMap(([key, value]) => {
    if (key === 'properties')
      return Object.entries(value as object).flatMap(([name, member]) => unlimitedTexts(member, `${at}.${name}`))
    return unlimitedTexts(value, key === 'items' || key === 'prefixItems' ? `${at}[]` : at)
  })
}

it('limits every text that a procedure takes', () => {
  const found = Object.entries(procedures).flatMap(([name, { input }]) =>
    unlimitedTexts(z.toJSONSchema(input, { io: 'input', unrepresentable: 'any' }), name),
  )
  expect(found).toEqual([])
  expect(unlimitedTexts(z.toJSONSchema(z.strictObject({ plan: z.array(z.string()) })), 'x')).toEqual(['x.plan[]'])
})

it('takes the same length of a name, a reason and a note wherever they are typed', () => {
  const { 'specimens.add': add, 'specimens.correct': correct, 'breaks.assess': assess } = procedures
  const fields = { number: 'C1-LL-03', adhesive: 'epoxy' }
  const fits = (schema: z.ZodType, value: unknown) => schema.safeParse(value).success
  for (const [length, fitting] of [
    [200, true],
    [201, false],
  ] as const) {
    const by = 'x'.repeat(length)
    expect(fits(add.input, { fields, by })).toBe(fitting)
    expect(fits(correct.input, { specimenId: 1, fields, by, reason: 'misread' })).toBe(fitting)
    expect(fits(assess.input, { breakId: 1, by, woodFailurePercent: 40, failurePattern: null, note: '' })).toBe(fitting)
  }
})

it('takes no half of a character, which a file could not give back', () => {
  const { 'specimens.add': add } = procedures
  const fits = (number: string) => add.input.safeParse({ fields: { number, adhesive: 'epoxy' }, by: '' }).success
  expect(['C1-\ud800', '\udc00', 'C1-\ud83e'].map(fits)).toEqual([false, false, false])
  expect(fits('C1-🪵')).toBe(true)
})
