// Held by tests/browser/breaks/woodFromPicture.spec.ts.
import { useEffect, useState } from 'react'
import { type PictureThread, startPictureThread } from './pictureThread.ts'

/** A thread that works on pictures while the component is there; null until it has started. */
export function usePictureThread(wanted: boolean): PictureThread | null {
  const [thread, setThread] = useState<PictureThread | null>(null)
  useEffect(() => {
    if (!wanted) return
    const started = startPictureThread()
    setThread(started)
    return () => {
      started.end()
      setThread(null)
    }
  }, [wanted])
  return thread
}
