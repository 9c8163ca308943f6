import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { noWindowBecause, presentElectron } from '#shells/start/electronBinary.ts'

test('a Linux without a display cannot open a window, and root cannot run the sandbox', () => {
  const linux = { platform: 'linux', userId: 1000, environment: { DISPLAY: ':0' } } as const
  expect(noWindowBecause(linux)).toBeNull()
  expect(noWindowBecause({ ...linux, environment: { WAYLAND_DISPLAY: 'wayland-0' } })).toBeNull()
  expect(noWindowBecause({ ...linux, environment: {} })).toContain('no display')
  expect(noWindowBecause({ ...linux, userId: 0 })).toContain('root')
})

test('Windows and macOS always have one', () => {
  expect(noWindowBecause({ platform: 'win32', userId: undefined, environment: {} })).toBeNull()
  expect(noWindowBecause({ platform: 'darwin', userId: 0, environment: {} })).toBeNull()
})

test('the binary counts as present only when the file itself is there', () => {
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-electron-'))
  onTestFinished(() => rmSync(folder, { recursive: true }))
  expect(presentElectron(folder)).toBeNull()
  writeFileSync(join(folder, 'path.txt'), 'electron')
  expect(presentElectron(folder)).toBeNull()
  mkdirSync(join(folder, 'dist'))
  writeFileSync(join(folder, 'dist/electron'), '')
  expect(presentElectron(folder)).toBe(join(folder, 'dist/electron'))
})
