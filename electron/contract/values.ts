import * as z from 'zod'

export const finite = z.number()
export const positive = finite.positive()
export const percent = finite.min(0).max(100)
export const isoInstant = z.iso.datetime()
export const isoDate = z.iso.date()
export const id = z.int().positive()
/** A line that a person types: a name, a place. */
export const words = z.string().trim().max(200)
/** Numbers that cross every border as a typed array. */
export const samples = z.instanceof(Float64Array)
/** The input of what needs none. */
export const nothing = z.strictObject({})
