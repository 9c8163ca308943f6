import * as z from 'zod'

export const finite = z.number()
export const positive = finite.positive()
export const percent = finite.min(0).max(100)
export const isoInstant = z.iso.datetime()
export const isoDate = z.iso.date()
export const id = z.int().positive()

// What a person types has one limit for each kind of text, wherever it is typed.

/** Half of a pair of surrogates is no character: a file cannot hold it, and would give another one back. */
const typed = z.string().refine((text) => text.isWellFormed(), 'holds half of a character')

/** A line: a name, a place, who it was. */
export const words = typed.trim().max(200)
/** Where a port or a file lies. */
export const place = typed.min(1).max(4096)
/** Why something was done. */
export const reason = typed.trim().max(1000)
/** As much as there is to say. */
export const note = typed.max(4000)

/**
 * A text as it stands in a record. It came in under one of the limits above; it has none of its own, because an older program
 * took longer ones, and whatever was stored must stay readable.
 */
export const kept = z.string()
/** Numbers that cross every border as a typed array. */
export const samples = z.instanceof(Float64Array)
/** The input of what needs none. */
export const nothing = z.strictObject({})
