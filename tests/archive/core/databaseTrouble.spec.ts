import { expect, test } from 'vitest'
import { databaseTrouble } from '#archive/core/databaseTrouble.ts'
import { pickedSample } from '#contract/breaks/decision.ts'
import { Trouble } from '#contract/errors.ts'

function failure(code: string): Error {
  return Object.assign(new Error('as SQLite puts it'), { code })
}

// SQLite's result codes, https://www.sqlite.org/rescode.html, and the system's error names of POSIX errno.h.
test.each([
  ['SQLITE_FULL', 'disk-full'],
  ['SQLITE_IOERR_SHMOPEN', 'disk-full'],
  ['ENOSPC', 'disk-full'],
  ['EDQUOT', 'disk-full'],
  ['EFBIG', 'disk-full'],
  ['SQLITE_READONLY', 'archive-read-only'],
  ['SQLITE_READONLY_DIRECTORY', 'archive-read-only'],
  ['EROFS', 'archive-read-only'],
  ['EACCES', 'archive-read-only'],
  ['SQLITE_NOTADB', 'archive-damaged'],
  ['SQLITE_CORRUPT', 'archive-damaged'],
  ['SQLITE_CORRUPT_INDEX', 'archive-damaged'],
  ['SQLITE_BUSY', 'archive-in-use'],
  ['SQLITE_CANTOPEN', 'archive-missing'],
])('says of %s that it is "%s", where, and what to do', (code, trouble) => {
  const told = databaseTrouble(failure(code), 'loft.breakledger') as Trouble
  expect(told).toBeInstanceOf(Trouble)
  expect(told).toMatchObject({ code: trouble, message: expect.stringContaining('loft.breakledger') })
  expect(told.hint).toMatch(/^[A-Z].*[.]$/)
})

test('leaves a trouble and a fault of the program as they are', () => {
  const trouble = new Trouble('not-found', 'a', 'b')
  const fault = new RangeError('c')
  expect(databaseTrouble(trouble, 'x')).toBe(trouble)
  expect(databaseTrouble(fault, 'x')).toBe(fault)
  expect(databaseTrouble('text', 'x')).toBe('text')
  expect(databaseTrouble(failure('SQLITE_CONSTRAINT_CHECK'), 'x')).not.toBeInstanceOf(Trouble)
})

test('says of a stored record that does not fit its form, or is no JSON, that the archive is damaged', () => {
  const unfit = pickedSample.safeParse({ timeS: 'late', reading: 1 }).error
  expect(databaseTrouble(unfit, 'loft.breakledger')).toMatchObject({
    code: 'archive-damaged',
    message:
      'A record in the archive loft.breakledger cannot be read: Invalid input: expected number, received string at timeS.',
  })
  const noJson = new SyntaxError('Unexpected end of JSON input')
  expect(databaseTrouble(noJson, 'loft.breakledger')).toMatchObject({ code: 'archive-damaged' })
})
