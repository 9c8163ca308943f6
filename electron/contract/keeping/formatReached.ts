import * as z from 'zod'
import { id, isoInstant, kept } from '../values.ts'

/** That an archive was made in a version of the format, or brought to it. */
export const formatReached = z.strictObject({ formatVersion: id, reachedAt: isoInstant, program: kept })
