import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { correctTheValue, programFault, Trouble, troubleFrom } from '#contract/errors.ts'

describe('what may cross a boundary of something thrown', () => {
  it('is an expected trouble as it was said', () => {
    const trouble = new Trouble('disk-full', 'The disk is full.', 'Make room.')
    expect(troubleFrom(trouble)).toEqual({ code: 'disk-full', message: 'The disk is full.', hint: 'Make room.' })
  })
  it('is the place of a value that does not fit, to be corrected', () => {
    const { error } = z.strictObject({ number: z.string().min(1) }).safeParse({ number: '' })
    const { code, message, hint } = troubleFrom(error)
    expect({ code, hint }).toEqual({ code: 'invalid-input', hint: correctTheValue })
    expect(message).toContain('number')
  })
  it('is a fault of the program for all else, and never more than its words', () => {
    const fault = { code: 'internal', hint: programFault }
    expect(troubleFrom(new RangeError('no samples'))).toEqual({ ...fault, message: 'no samples' })
    expect(troubleFrom('out of luck')).toEqual({ ...fault, message: 'out of luck' })
    expect(troubleFrom(undefined)).toEqual({ ...fault, message: 'undefined' })
  })
})
