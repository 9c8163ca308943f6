import { expect, test } from 'vitest'
import { archiveFile, keptHeadsFile, openedArchivesFile } from '#shells/archiveFile.ts'

const linux = { platform: 'linux', home: '/home/ada', environment: {} } as const

// XDG Base Directory Specification 0.8: $XDG_DATA_HOME, else $HOME/.local/share; a relative path is invalid and ignored.
test('on Linux it lies where the XDG specification puts data', () => {
  expect(archiveFile('own', linux)).toBe('/home/ada/.local/share/breakledger/archive.breakledger')
  expect(archiveFile('own', { ...linux, environment: { XDG_DATA_HOME: '/data' } })).toBe(
    '/data/breakledger/archive.breakledger',
  )
  expect(archiveFile('own', { ...linux, environment: { XDG_DATA_HOME: 'data' } })).toContain('/home/ada/.local/share/')
})

test('on Windows and macOS it lies in the folder for the data of programs', () => {
  const windows = { platform: 'win32', home: 'C:\\Users\\Ada', environment: {} } as const
  expect(archiveFile('own', windows)).toBe('C:\\Users\\Ada\\AppData\\Roaming\\Breakledger\\archive.breakledger')
  expect(archiveFile('own', { ...windows, environment: { APPDATA: 'D:\\Roam' } })).toBe(
    'D:\\Roam\\Breakledger\\archive.breakledger',
  )
  expect(archiveFile('own', { platform: 'darwin', home: '/Users/ada', environment: {} })).toBe(
    '/Users/ada/Library/Application Support/Breakledger/archive.breakledger',
  )
})

test('the demo has a file of its own, so that invented breaks never mix with real ones', () => {
  expect(archiveFile('demo', linux)).not.toBe(archiveFile('own', linux))
})

test('heads of chains lie in the same folder, so that they are not in the archive that they vouch for', () => {
  expect(keptHeadsFile(linux)).toBe('/home/ada/.local/share/breakledger/heads.json')
  expect(keptHeadsFile({ platform: 'win32', home: 'C:\\Users\\Ada', environment: {} })).toBe(
    'C:\\Users\\Ada\\AppData\\Roaming\\Breakledger\\heads.json',
  )
})

test('which archives were opened is remembered in the same folder', () => {
  expect(openedArchivesFile(linux)).toBe('/home/ada/.local/share/breakledger/opened.json')
})
