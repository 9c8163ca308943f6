import type { ReactNode } from 'react'
import type { Attachment } from '#contract/specimens/attachment.ts'
import type { KeptPicture } from '#contract/specimens/pictureProcedures.ts'
import type { PictureThread } from './pictureThread.ts'
import { Thumbnail } from './Thumbnail.tsx'
import './pictures.css'

/** Kept pictures, small, each of which opens; `openName` says for whoever cannot see them what opening shows. */
export function PictureList({
  pictures,
  thread,
  openName,
  onOpen,
  below,
}: {
  pictures: readonly KeptPicture[]
  thread: PictureThread | null
  openName(attachment: Attachment): string
  onOpen(picture: KeptPicture): void
  below?(picture: KeptPicture): ReactNode
}) {
  return (
    <ul className="picture-list">
      {pictures.map((picture) => (
        <li key={picture.attachment.attachmentId}>
          <button
            type="button"
            className="picture-open"
            aria-label={openName(picture.attachment)}
            onClick={() => onOpen(picture)}
          >
            {thread === null ? null : <Thumbnail attachment={picture.attachment} thread={thread} />}
            <span className="picture-name">{picture.attachment.name}</span>
          </button>
          {below?.(picture)}
        </li>
      ))}
    </ul>
  )
}
