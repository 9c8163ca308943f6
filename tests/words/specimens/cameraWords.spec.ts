import { expect, it } from 'vitest'
import { cameraFileName, cameraTrouble, storedWords } from '#words/specimens/cameraWords.ts'

it.each([
  // Names of the Media Capture and Streams recommendation, 10.6 (from memory).
  ['NotAllowedError', 'denied', /may not be used/],
  ['NotFoundError', 'not-found', /no camera/],
  ['OverconstrainedError', 'not-found', /no camera/],
  ['NotReadableError', 'not-readable', /unplugged/],
  ['AbortError', 'not-readable', /unplugged/],
  ['', 'unsupported', /no camera/],
])('says what to do where the camera says "%s"', (name, code, message) => {
  const trouble = cameraTrouble(name)
  expect(trouble).toMatchObject({ code, message: expect.stringMatching(message) })
  expect(trouble.hint).toMatch(/picture file can be added/)
})

it('names a photograph by the moment at which it was taken', () => {
  expect(cameraFileName(new Date(2031, 4, 2, 9, 3, 15))).toBe('photograph 2031-05-02 09.03.15.jpg')
})

it('counts what was stored', () => {
  expect(storedWords(0)).toMatch(/Enter takes/)
  expect(storedWords(1)).toMatch(/^One photograph/)
  expect(storedWords(12)).toBe('12 photographs are stored.')
})
