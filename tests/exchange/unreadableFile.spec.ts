import { expect, it } from 'vitest'
import { unreadableFile } from '#exchange/unreadableFile.ts'

const failed = (code: string) => Object.assign(new Error(`${code}: something`), { code })

it.each([
  ['ENOENT', 'not-found', 'a.csv: there is no such file.'],
  ['EACCES', 'denied', 'a.csv: this user may not read the file.'],
  ['EISDIR', 'not-readable', 'a.csv: this is a folder.'],
  ['EIO', 'not-readable', 'a.csv: cannot be read (EIO: something).'],
])('says of %s what is wrong with the file', (code, trouble, message) => {
  expect(unreadableFile('a.csv', failed(code))).toMatchObject({ code: trouble, message })
})

it('leaves alone what no disk throws', () => {
  const fault = new TypeError('no')
  expect(unreadableFile('a.csv', fault)).toBe(fault)
})
