import type { KeptPicture } from '#contract/specimens/pictureProcedures.ts'
import { pictureFacts } from '#words/specimens/pictureWords.ts'
import { CancelButton } from '../../widgets/dialogs/CancelButton.tsx'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { Thumbnail } from './Thumbnail.tsx'
import { usePictureThread } from './usePictureThread.ts'

/** Pixels along the longer side of a picture that fills a window. */
const longestSide = 2000

/** One kept picture, large. */
export function PictureDialog({ picture: { attachment }, onClose }: { picture: KeptPicture; onClose(): void }) {
  const thread = usePictureThread(true)
  return (
    <Dialog title={attachment.name} onClose={onClose} width="widest">
      {thread === null ? null : (
        <Thumbnail attachment={attachment} thread={thread} longestSide={longestSide} className="picture-large" />
      )}
      <p className="quiet">{pictureFacts(attachment)}</p>
      <div className="dialog-buttons">
        <CancelButton>Close</CancelButton>
      </div>
    </Dialog>
  )
}
