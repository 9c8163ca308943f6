import { type DragEvent, type ReactNode, useRef, useState } from 'react'
import type { KeptPicture, PictureOwner } from '#contract/specimens/pictureProcedures.ts'
import { pictureName, readingWords } from '#words/specimens/pictureWords.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { Thumbnail } from './Thumbnail.tsx'
import { useAddPictures } from './useAddPictures.ts'
import { usePictureThread } from './usePictureThread.ts'
import './pictures.css'

const taken = 'image/jpeg,image/png,image/webp'

/** The photographs of a specimen or of broken faces: seen small, opened, and added by file, by dropping or pasting, or with a camera. */
export function PicturesSection({ owner, onOpen }: { owner: PictureOwner; onOpen(picture: KeptPicture): void }) {
  const answer = useAnswer('pictures.list', owner)
  const adding = useAddPictures(owner)
  const [over, setOver] = useState(false)
  const pictures = answer.value ?? []
  const thread = usePictureThread(pictures.length > 0)
  const add = (files: Iterable<File>) => void adding.add(files)

  function onDrag(event: DragEvent, isOver: boolean): void {
    if (!event.dataTransfer.types.includes('Files')) return
    event.preventDefault()
    setOver(isOver)
  }

  return (
    <section
      className="pictures"
      aria-labelledby="pictures-title"
      data-over={over ? '' : undefined}
      onDragOver={(event) => onDrag(event, true)}
      onDragLeave={(event) => onDrag(event, false)}
      onDrop={(event) => {
        onDrag(event, false)
        add(event.dataTransfer.files)
      }}
    >
      <h2 id="pictures-title">Photographs</h2>
      <div className="pictures-add">
        <FileButton onFiles={add}>Add photographs</FileButton>
        <FileButton onFiles={add} camera>
          Take a photograph
        </FileButton>
        <p className="quiet">Both faces, held straight, without glare. Files can be dropped or pasted here as well.</p>
      </div>
      <p role="status" className="quiet">
        {adding.progress === null ? '' : `Storing ${adding.progress.done + 1} of ${adding.progress.of} …`}
      </p>
      <Notice trouble={adding.error ?? answer.error} />
      {pictures.length === 0 ? null : (
        <ul className="picture-list">
          {pictures.map((picture) => (
            <li key={picture.attachment.attachmentId}>
              <button
                type="button"
                className="picture-open"
                aria-label={`Wood failure from ${pictureName(picture.attachment)}`}
                onClick={() => onOpen(picture)}
              >
                {thread === null ? null : <Thumbnail attachment={picture.attachment} thread={thread} />}
                <span className="picture-name">{picture.attachment.name}</span>
              </button>
              <p className="quiet">{readingWords(picture.readings)}</p>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}

/** A button that asks for picture files; of a device with a camera for a picture that is taken now. */
function FileButton({
  camera = false,
  onFiles,
  children,
}: {
  camera?: boolean
  onFiles(files: Iterable<File>): void
  children: ReactNode
}) {
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
        accept={taken}
        {...(camera ? { capture: 'environment' as const } : { multiple: true })}
        onChange={(event) => {
          onFiles([...(event.currentTarget.files ?? [])])
          event.currentTarget.value = ''
        }}
      />
    </>
  )
}
