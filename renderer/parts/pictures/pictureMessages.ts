import type { ShownPicture } from '#domain/strength/face/facePixels.ts'
import type { FaceCorners } from '#domain/strength/face/homography.ts'
import type { TornScores } from '#domain/strength/face/tornScores.ts'

/** What the page asks of the thread that works on pictures. Corners are shares of the picture's width and height. */
export type PictureRequest =
  | { id: number; kind: 'show'; parts: Uint8Array<ArrayBuffer>[]; mediaType: string; longestSide: number }
  | { id: number; kind: 'read'; corners: FaceCorners; proportion: number }

/** A face that was read: as it looks straight on, and how much each of its pixels looks like torn wood. */
export type FaceReading = { face: ShownPicture; torn: TornScores }

/** What the thread says. A `read` that a newer one overtakes is never answered. */
export type PictureAnswer =
  | { id: number; kind: 'shown'; bitmap: ImageBitmap }
  | { id: number; kind: 'progress'; share: number }
  | { id: number; kind: 'read'; reading: FaceReading }
  | { id: number; kind: 'failed' }
