import { describe, expect, it } from 'vitest'
import { words } from '#contract/values.ts'
import { readFile } from '#renderer/parts/files/readFile.ts'

describe('a file that is handed to the page', () => {
  it('is read with its name', async () => {
    expect(await readFile(new File(['28'], 'face.jpg'))).toEqual({
      name: 'face.jpg',
      content: new Uint8Array([0x32, 0x38]),
    })
  })

  it.each(['x'.repeat(250), '\u{1fab5}'.repeat(150).concat('y.jpg'), `${'half'}\ud83e.jpg`])(
    'has a name that a record takes, whatever its own is: %s',
    async (name) => {
      const read = await readFile(new File([], name))
      expect(words.safeParse(read.name).success).toBe(true)
      expect(read.name.slice(-4)).toBe(name.slice(-4))
    },
  )

  it('that is a folder is refused in a sentence', async () => {
    // As a browser rejects it for a folder that was dropped: a DOMException called NotFoundError
    const arrayBuffer = () => Promise.reject(new DOMException('could not be found', 'NotFoundError'))
    await expect(readFile({ name: 'faces', arrayBuffer })).rejects.toMatchObject({
      code: 'not-readable',
      message: '"faces" cannot be read: it is a folder, or it is no longer where it was.',
    })
  })
})
