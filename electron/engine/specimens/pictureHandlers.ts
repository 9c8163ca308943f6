import { Trouble } from '#contract/errors.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import {
  pictureBytesAtOnce,
  type pictureProcedures,
  refuseLargePicture,
} from '#contract/specimens/pictureProcedures.ts'
import { mostPixels, pictureHeader } from '#domain/strength/face/pictureHeader.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Throws the trouble "invalid-input" for what is no picture that can be kept and shown. */
function mediaTypeOf(name: string, content: Uint8Array) {
  const refused = (message: string, hint: string) => new Trouble('invalid-input', message, hint)
  refuseLargePicture(name, content.length)
  const header = pictureHeader(content)
  if (header === null)
    throw refused(
      `"${name}" is no picture that can be kept: by its bytes it is neither JPEG nor PNG nor WebP.`,
      'Add a picture of one of these kinds; a telephone that keeps another kind can save its pictures as JPEG.',
    )
  if (header.width * header.height > mostPixels)
    throw refused(
      `"${name}" has ${header.width} x ${header.height} pixels, more than can be shown.`,
      'Save it with fewer pixels and add it again.',
    )
  return header.mediaType
}

/** Pictures: kept, listed, given back as they came; and what people read from them. */
export function pictureHandlers({ archive, clock }: HandlerParts): HandlersOf<typeof pictureProcedures> {
  return {
    'pictures.list': (owner) => archive.pictures(owner),
    'pictures.content': ({ attachmentId, from }) => archive.pictureContent(attachmentId, from, pictureBytesAtOnce),
    'pictures.attach': async ({ specimenId, breakId, name, content, by }) => {
      if ((specimenId === null) === (breakId === null))
        throw new Trouble(
          'invalid-input',
          'A picture belongs to one specimen or to one break.',
          'Add it on the record of the one that it shows.',
        )
      const mediaType = mediaTypeOf(name, content)
      return archive.addPicture({ specimenId, breakId, name, mediaType, by, recordedAt: clock.instant() }, content)
    },
    'pictures.decide': (reading) => archive.addWoodPicture({ ...reading, recordedAt: clock.instant() }),
  }
}
