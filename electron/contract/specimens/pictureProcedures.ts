// Held by tests/engine/specimens/pictureHandlers.spec.ts.
import * as z from 'zod'
import { Trouble } from '../errors.ts'
import { deed, question } from '../procedure.ts'
import { type Topic, topicsOf } from '../topics.ts'
import { id, words } from '../values.ts'
import { attachment, woodPicture } from './attachment.ts'

/** The largest picture that is taken, in bytes. */
export const largestPictureBytes = 30_000_000

/** Throws the trouble "invalid-input" for a picture that is larger; asked before it is sent, and again where it arrives. */
export function refuseLargePicture(name: string, bytes: number): void {
  if (bytes > largestPictureBytes)
    throw new Trouble(
      'invalid-input',
      `"${name}" has ${(bytes / 1e6).toFixed(1)} MB; a picture may have ${largestPictureBytes / 1e6} MB.`,
      'Save it smaller, as a JPEG picture, and add it again.',
    )
}

/** The bytes of a picture that are given at once. */
export const pictureBytesAtOnce = 2_000_000

const content = z.instanceof(Uint8Array)

/** Hexadecimal digits of a mask of 1024 x 1024 pixels. */
const largestMaskDigits = 262_144

/** What a picture shows: a specimen, or the broken faces of a break. One of the two is named. */
const owner = z.strictObject({ specimenId: id.nullable(), breakId: id.nullable() })
export type PictureOwner = z.infer<typeof owner>

const topicsOfOwner = ({ specimenId, breakId }: PictureOwner): Topic[] => [
  ...topicsOf('specimen', specimenId === null ? [] : [specimenId]),
  ...topicsOf('break', breakId === null ? [] : [breakId]),
]

/** What was read from a picture, without its mask. */
export const woodReading = woodPicture.omit({ mask: true })
export type WoodReading = z.infer<typeof woodReading>

export const keptPicture = z.strictObject({ attachment, readings: z.array(woodReading) })
export type KeptPicture = z.infer<typeof keptPicture>

/** Pictures of specimens and of broken faces, kept as they came, and the wood failure that people read from them. */
export const pictureProcedures = {
  /** In the order in which they came; the readings of each too. */
  'pictures.list': question({ input: owner, output: z.array(keptPicture), reads: topicsOfOwner }),
  /** The bytes as they came, a part at a time, since a whole photograph in one message would hold the page up. */
  'pictures.content': question({
    input: z.strictObject({ attachmentId: id, from: z.int().nonnegative() }),
    output: z.strictObject({ bytes: z.int().positive(), content }),
    reads: () => [],
  }),
  /** What the picture is, is judged by its bytes. One that is there already is not kept twice. */
  'pictures.attach': deed({
    input: owner.extend({ name: words, content, by: words }),
    output: attachment,
  }),
  /** Keeps what was read from a picture; the wood failure of the break is said by an assessment. */
  'pictures.decide': deed({
    input: woodPicture
      .omit({ woodPictureId: true, recordedAt: true })
      .extend({ by: words, method: words, mask: woodPicture.shape.mask.max(largestMaskDigits) }),
    output: woodReading,
  }),
}
