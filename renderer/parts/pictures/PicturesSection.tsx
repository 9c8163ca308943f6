import { type ReactNode, useRef, useState } from 'react'
import type { Attachment } from '#contract/specimens/attachment.ts'
import type { KeptPicture, PictureOwner } from '#contract/specimens/pictureProcedures.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { useFileDrop } from '../../widgets/forms/useFileDrop.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { CameraDialog } from './CameraDialog.tsx'
import { PictureList } from './PictureList.tsx'
import { useAddPictures } from './useAddPictures.ts'
import { usePictureThread } from './usePictureThread.ts'
import './pictures.css'

const taken = 'image/jpeg,image/png,image/webp'

/** The photographs of a specimen or of broken faces: seen small, opened, and added by file, by dropping or pasting, or with a camera. */
export function PicturesSection({
  owner,
  hint,
  openName,
  onOpen,
  below,
}: {
  owner: PictureOwner
  /** What a photograph should show. */
  hint: string
  openName(attachment: Attachment): string
  onOpen(picture: KeptPicture): void
  below?(picture: KeptPicture): ReactNode
}) {
  const answer = useAnswer('pictures.list', owner)
  const adding = useAddPictures(owner)
  const [camera, setCamera] = useState(false)
  const pictures = answer.value ?? []
  const thread = usePictureThread(pictures.length > 0)
  const add = (files: Iterable<File>) => void adding.add(files)
  const drop = useFileDrop(add)

  return (
    <section className="pictures" aria-labelledby="pictures-title" {...drop}>
      <h2 id="pictures-title">Photographs</h2>
      <div className="pictures-add">
        <FileButton onFiles={add}>Add photographs</FileButton>
        <button type="button" className="button" onClick={() => setCamera(true)}>
          Take a photograph
        </button>
        <p className="quiet">{hint} Files can be dropped or pasted here as well.</p>
      </div>
      <p role="status" className="quiet">
        {adding.progress === null ? '' : `Storing ${adding.progress.done + 1} of ${adding.progress.of} …`}
      </p>
      <Notice trouble={(camera ? null : adding.error) ?? answer.error} />
      {pictures.length === 0 ? null : (
        <PictureList
          pictures={pictures}
          thread={thread}
          openName={openName}
          onOpen={onOpen}
          {...(below ? { below } : {})}
        />
      )}
      {camera ? <CameraDialog adding={adding} onClose={() => setCamera(false)} /> : null}
    </section>
  )
}

/** A button that asks for picture files. */
function FileButton({ onFiles, children }: { onFiles(files: Iterable<File>): void; children: ReactNode }) {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button type="button" className="button" onClick={() => input.current?.click()}>
        {children}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        accept={taken}
        onChange={(event) => {
          onFiles([...(event.currentTarget.files ?? [])])
          event.currentTarget.value = ''
        }}
      />
    </>
  )
}
