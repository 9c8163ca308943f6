import { expect, test } from 'vitest'
import { archiveName, knownArchiveWords } from '#words/keeping/archiveWords.ts'

test('calls an archive by its file, on every system, and the demo by that name', () => {
  expect(archiveName('/home/bench/.local/share/breakledger/archive.breakledger', false)).toBe('archive')
  expect(archiveName('C:\\Benches\\loft 2031.BREAKLEDGER', false)).toBe('loft 2031')
  expect(archiveName('/home/bench/loft.db', false)).toBe('loft.db')
  expect(archiveName('/home/bench/.breakledger', false)).toBe('/home/bench/.breakledger')
  expect(archiveName('/home/bench/demo.breakledger', true)).toBe('Demo')
})

test('says how an archive stands that can be opened', () => {
  const own = { kind: 'own', isOpen: false, isThere: true, isUsual: true } as const
  expect(knownArchiveWords(own)).toBe('')
  expect(knownArchiveWords({ ...own, kind: 'demo', isOpen: true })).toBe('simulated, open now')
  expect(knownArchiveWords({ ...own, isThere: false })).toBe('new: made when it is opened')
  expect(knownArchiveWords({ ...own, isThere: false, isUsual: false })).toBe('the file is gone')
})
