import * as z from 'zod'
import { finite, id, isoInstant, kept, percent } from '../values.ts'

export const pictureType = z.enum(['image/jpeg', 'image/png', 'image/webp'])
export type PictureType = z.infer<typeof pictureType>

/** A picture of a specimen or of its broken faces, kept as it came. The bytes lie beside the record, under its hash. */
export const attachment = z.strictObject({
  attachmentId: id,
  recordedAt: isoInstant,
  by: kept,
  specimenId: id.nullable(),
  breakId: id.nullable(),
  name: kept,
  mediaType: pictureType,
  bytes: z.int().positive(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
})
export type Attachment = z.infer<typeof attachment>

const corner = z.strictObject({ x: finite, y: finite })

/** What was read from a picture of a broken face, and what the person made of it. */
export const woodPicture = z.strictObject({
  woodPictureId: id,
  recordedAt: isoInstant,
  by: kept,
  attachmentId: id,
  /** The bonded area in the picture, as shares of its width and height, clockwise from the upper left. */
  corners: z.array(corner).length(4),
  threshold: finite,
  /** Which version of the proposal it was. */
  method: kept,
  maskWidth: z.int().positive(),
  maskHeight: z.int().positive(),
  /** One bit a pixel, row by row, highest bit first, 1: torn wood; as hexadecimal digits. */
  mask: z.string().regex(/^([0-9a-f]{2})*$/),
  proposedPercent: percent,
  decidedPercent: percent.multipleOf(5),
})
export type WoodPicture = z.infer<typeof woodPicture>
