import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { knownArchives, noteOpened, openedArchives } from '#shells/knownArchives.ts'

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'breakledger-known-'))
  onTestFinished(() => rmSync(made, { recursive: true, force: true }))
  return made
}
const at = (minute: number) => `2031-04-06T08:${String(minute).padStart(2, '0')}:00.000Z`

test('remembers what was opened, newest first, each once, and only so many', () => {
  const file = join(folder(), 'new folder', 'opened.json')
  expect(openedArchives(file)).toEqual([])
  for (let minute = 0; minute < 20; minute++)
    noteOpened(file, { path: `/loft/${minute % 15}.breakledger`, openedAt: at(minute) })
  const kept = openedArchives(file)
  expect(kept).toHaveLength(12)
  expect(kept[0]).toEqual({ path: '/loft/4.breakledger', openedAt: at(19) })
  expect(new Set(kept.map(({ path }) => path)).size).toBe(12)
})

test('a list that cannot be read or written keeps no archive from being opened', () => {
  const home = folder()
  const file = join(home, 'opened.json')
  writeFileSync(file, '{"half":')
  expect(openedArchives(file)).toEqual([])
  noteOpened(join(file, 'below a file', 'opened.json'), { path: '/loft/1.breakledger', openedAt: at(1) })
})

test('knows the usual archives too, says which is open and which is not there', () => {
  const home = folder()
  const places = { own: join(home, 'archive.breakledger'), demo: join(home, 'demo.breakledger') }
  writeFileSync(places.demo, '')
  const gone = join(home, 'gone.breakledger')
  expect(knownArchives([{ path: gone, openedAt: at(1) }], places, places.demo)).toEqual([
    { path: places.demo, kind: 'demo', isUsual: true, isOpen: true, isThere: true, openedAt: null },
    { path: gone, kind: 'own', isUsual: false, isOpen: false, isThere: false, openedAt: at(1) },
    { path: places.own, kind: 'own', isUsual: true, isOpen: false, isThere: false, openedAt: null },
  ])
})
