// Held by tests/archive/verify/recordKinds.spec.ts.
import { attachment, woodPicture } from '#contract/specimens/attachment.ts'
import type { Topic } from '#contract/topics.ts'
import { bytes, json, plain } from '../core/columns.ts'
import { recordKind } from '../core/recordKind.ts'
import { numbered } from '../core/recordTable.ts'

/** A picture as it came. */
export const attachmentKind = recordKind({
  name: 'attachment',
  noun: 'picture',
  table: 'attachment',
  identity: numbered('attachmentId'),
  instant: 'recordedAt',
  schema: attachment,
  columns: {
    recordedAt: plain,
    by: plain,
    specimenId: plain,
    breakId: plain,
    name: plain,
    mediaType: plain,
    bytes: plain,
    sha256: plain,
  },
  topics: ({ specimenId, breakId }): Topic[] => [
    ...(specimenId === null ? [] : [`specimen ${specimenId}` as const]),
    ...(breakId === null ? [] : [`break ${breakId}` as const]),
  ],
})

/** What was read from a picture of a broken face. */
export const woodPictureKind = recordKind({
  name: 'wood-picture',
  noun: 'reading of a picture',
  table: 'wood_picture',
  identity: numbered('woodPictureId'),
  instant: 'recordedAt',
  schema: woodPicture,
  columns: {
    recordedAt: plain,
    by: plain,
    attachmentId: plain,
    corners: json,
    threshold: plain,
    method: plain,
    maskWidth: plain,
    maskHeight: plain,
    mask: bytes,
    proposedPercent: plain,
    decidedPercent: plain,
  },
})
