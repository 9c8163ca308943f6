import type { Emit } from '#contract/events.ts'
import type { Handlers } from '#contract/procedures.ts'
import { type KeptPicture, type PictureOwner, pictureBytesAtOnce } from '#contract/specimens/pictureProcedures.ts'
import { topicsOf } from '#contract/topics.ts'
import { pictureHeader } from '#domain/strength/face/pictureHeader.ts'
import { at } from './scriptedRecords.ts'

/** Pictures that are kept in memory. */
export function scriptedPictures(
  emit: Emit,
): Pick<Handlers, 'pictures.list' | 'pictures.attach' | 'pictures.content' | 'pictures.decide'> {
  const kept: (KeptPicture & { content: Uint8Array<ArrayBuffer> })[] = []
  const shows = ({ attachment }: KeptPicture, { specimenId, breakId }: PictureOwner) =>
    attachment.specimenId === specimenId && attachment.breakId === breakId
  // Once it is kept: whoever hears of it asks at once.
  const changed = ({ breakId, specimenId }: PictureOwner) =>
    queueMicrotask(() =>
      emit('records.changed', {
        topics: [
          ...topicsOf('break', breakId === null ? [] : [breakId]),
          ...topicsOf('specimen', specimenId === null ? [] : [specimenId]),
        ],
      }),
    )
  return {
    'pictures.list': async (owner) =>
      kept.filter((one) => shows(one, owner)).map(({ attachment, readings }) => ({ attachment, readings })),
    'pictures.attach': async ({ content, ...sent }) => {
      const attachment = {
        ...sent,
        attachmentId: kept.length + 1,
        recordedAt: at(60),
        mediaType: pictureHeader(content)!.mediaType,
        bytes: content.length,
        sha256: '5'.repeat(64),
      }
      changed(attachment)
      kept.push({ attachment, readings: [], content: new Uint8Array(content) })
      return attachment
    },
    'pictures.content': async ({ attachmentId, from }) => {
      const { content } = kept[attachmentId - 1]!
      return { bytes: content.length, content: content.slice(from, from + pictureBytesAtOnce) }
    },
    'pictures.decide': async ({ mask: _mask, ...reading }) => {
      const decided = { ...reading, woodPictureId: 1, recordedAt: at(61) }
      const { readings, attachment } = kept[reading.attachmentId - 1]!
      readings.push(decided)
      changed(attachment)
      return decided
    },
  }
}
