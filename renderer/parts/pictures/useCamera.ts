// Held by tests/browser/breaks/woodFromPicture.spec.ts.
import { useEffect, useState } from 'react'
import type { TroubleMessage } from '#contract/errors.ts'
import { cameraTrouble } from '#words/specimens/cameraWords.ts'

export type CameraState = {
  /** What the camera sees; null until it is on. */
  stream: MediaStream | null
  /** Cameras that are there, once one may be used. */
  cameras: readonly { deviceId: string; label: string }[]
  error: TroubleMessage | null
}

const off: CameraState = { stream: null, cameras: [], error: null }
/** As many pixels as the camera has; it takes what is nearest. */
const sharp = { width: { ideal: 4096 }, height: { ideal: 2160 } }

/** Switches a camera on while the component is there; '': the one that looks away from the person, or the only one. */
export function useCamera(deviceId: string): CameraState {
  const [state, setState] = useState(off)
  useEffect(() => {
    let wanted = true
    let on: MediaStream | null = null
    const fail = (name: string) => {
      if (wanted) setState((before) => ({ ...before, stream: null, error: cameraTrouble(name) }))
    }
    async function start(): Promise<void> {
      const which = deviceId === '' ? { facingMode: 'environment' } : { deviceId: { exact: deviceId } }
      on = await navigator.mediaDevices.getUserMedia({ video: { ...sharp, ...which }, audio: false })
      if (!wanted) return switchOff(on)
      const cameras = (await navigator.mediaDevices.enumerateDevices()).filter(({ kind }) => kind === 'videoinput')
      for (const track of on.getVideoTracks()) track.onended = () => fail('NotReadableError')
      if (wanted) setState({ stream: on, cameras, error: null })
    }
    if (navigator.mediaDevices === undefined) fail('NotSupportedError')
    else start().catch((thrown: unknown) => fail(thrown instanceof Error ? thrown.name : ''))
    return () => {
      wanted = false
      switchOff(on)
    }
  }, [deviceId])
  return state
}

function switchOff(stream: MediaStream | null): void {
  for (const track of stream?.getTracks() ?? []) track.stop()
}
