import type { TroubleMessage } from '#contract/errors.ts'
import { writeCount } from '../units/numbers.ts'

const orAFile = 'A picture file can be added, dropped or pasted all the same.'

/** Why there is no picture of a camera, by the name under which a browser says so. */
export function cameraTrouble(name: string): TroubleMessage {
  switch (name) {
    case 'NotAllowedError':
      return {
        code: 'denied',
        message: 'The camera may not be used by this page.',
        hint: `Allow it in the settings of the browser or of the system, close this and open it again. ${orAFile}`,
      }
    case 'NotFoundError':
    case 'OverconstrainedError':
      return { code: 'not-found', message: 'There is no camera.', hint: `Plug one in and open this again. ${orAFile}` }
    case 'NotReadableError':
    case 'AbortError':
      return {
        code: 'not-readable',
        message: 'The camera gives no picture: it was unplugged, or another program uses it.',
        hint: `See to its cable, close the other program and open this again. ${orAFile}`,
      }
    default:
      return { code: 'unsupported', message: 'This page can use no camera.', hint: orAFile }
  }
}

/** Name of a photograph taken at a moment, in local time: "photograph 2031-05-02 09.30.15.jpg". */
export function cameraFileName(at: Date): string {
  const two = (value: number) => String(value).padStart(2, '0')
  const day = [at.getFullYear(), two(at.getMonth() + 1), two(at.getDate())].join('-')
  const time = [at.getHours(), at.getMinutes(), at.getSeconds()].map(two).join('.')
  return `photograph ${day} ${time}.jpg`
}

/** How many were taken and stored since the camera is on. */
export function storedWords(count: number): string {
  if (count === 0) return 'Hold the face straight, without glare; Enter takes the photograph.'
  return count === 1
    ? 'One photograph is stored. Now the other face, if there is one.'
    : `${writeCount(count)} photographs are stored.`
}
