// Held by tests/browser/breaks/woodFromPicture.spec.ts.
import { useEffect, useRef, useState } from 'react'
import { cameraFileName, storedWords } from '#words/specimens/cameraWords.ts'
import { CancelButton } from '../../widgets/dialogs/CancelButton.tsx'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { SelectField } from '../../widgets/Field.tsx'
import { Notice } from '../../widgets/Notice.tsx'
import type { AddPictures } from './useAddPictures.ts'
import { useCamera } from './useCamera.ts'

/** What a camera sees, and photographs taken from it, one face after the other. The camera is on while the dialog is open. */
export function CameraDialog({ adding, onClose }: { adding: AddPictures; onClose(): void }) {
  const video = useRef<HTMLVideoElement>(null)
  const [deviceId, setDeviceId] = useState('')
  const [stored, setStored] = useState(0)
  const { stream, cameras, error } = useCamera(deviceId)
  const busy = stream === null || adding.progress !== null

  useEffect(() => {
    if (video.current !== null) video.current.srcObject = stream
  }, [stream])

  async function take(): Promise<void> {
    if (busy || video.current === null || video.current.videoWidth === 0) return
    const file = await photographOf(video.current)
    if (await adding.add([file])) setStored((before) => before + 1)
  }

  return (
    <Dialog title="Take a photograph" onClose={onClose} width="wide">
      <Notice trouble={error ?? adding.error} />
      <video ref={video} className="camera-view" muted autoPlay playsInline aria-label="What the camera sees" />
      {cameras.length < 2 ? null : (
        <SelectField label="Camera" value={deviceId} onChange={(event) => setDeviceId(event.currentTarget.value)}>
          <option value="">The one that looks at the bench</option>
          {cameras.map(({ deviceId, label }) => (
            <option key={deviceId} value={deviceId}>
              {label}
            </option>
          ))}
        </SelectField>
      )}
      <p role="status" className="quiet">
        {adding.progress !== null ? 'Storing …' : storedWords(stored)}
      </p>
      <div className="dialog-buttons">
        <CancelButton>Close</CancelButton>
        <button
          type="button"
          className="button button-primary"
          data-first-focus=""
          aria-disabled={busy}
          onClick={() => void take()}
        >
          Take
        </button>
      </div>
    </Dialog>
  )
}

/** The picture that stands in a video now, as a JPEG file. */
async function photographOf(video: HTMLVideoElement): Promise<File> {
  const canvas = new OffscreenCanvas(video.videoWidth, video.videoHeight)
  canvas.getContext('2d')!.drawImage(video, 0, 0)
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 })
  return new File([blob], cameraFileName(new Date()), { type: blob.type })
}
