import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { groupOf, openTrouble } from '#acquisition/serial/portTrouble.ts'

describe('trouble on opening a port', () => {
  it.each([
    // What the port library said when each of these was tried on Linux; the Windows and macOS texts are from memory.
    ['Error Resource temporarily unavailable Cannot lock port', 'linux', 'port-busy'],
    ['Error: No such file or directory, cannot open /dev/pts/0', 'linux', 'port-missing'],
    ['Error: Inappropriate ioctl for device setting custom baud rate of 115200', 'linux', 'port-missing'],
    ['Error: Permission denied, cannot open /dev/ttyUSB0', 'linux', 'port-permission'],
    ['Opening COM3: Access denied', 'win32', 'port-busy'],
    ['Opening COM9: File not found', 'win32', 'port-missing'],
    ['Error: Resource busy, cannot open /dev/tty.usbserial', 'darwin', 'port-busy'],
    ['Something nobody has seen', 'linux', 'not-connected'],
  ])('"%s" on %s is %s', (reason, platform, code) => {
    const trouble = openTrouble('/dev/ttyUSB0', reason, 'dialout', platform)
    expect(trouble.code).toBe(code)
    expect(trouble.message).toContain('/dev/ttyUSB0')
    expect(trouble.hint).not.toBe('')
  })

  it('names the group of the device file on Linux and the command to join it', () => {
    const trouble = openTrouble('/dev/ttyUSB0', 'Error: Permission denied, cannot open /dev/ttyUSB0', 'uucp', 'linux')
    expect(trouble.message).toBe('You may not open the port /dev/ttyUSB0: it belongs to the group "uucp".')
    expect(trouble.hint).toContain('sudo usermod -aG uucp "$USER"')
    const usual = openTrouble('/dev/ttyUSB0', 'Error: Permission denied', null, 'linux')
    expect(usual.message).toContain('"dialout"')
    // Nobody is told to join root.
    expect(openTrouble('/dev/ttyS9', 'Error: Permission denied', 'root', 'linux').hint).not.toContain('usermod')
  })

  it('finds the group in the list of groups, or says that it cannot', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-'))
    try {
      const file = join(folder, 'group')
      writeFileSync(file, `other:x:${statSync(folder).gid + 1}:\nworkshop:x:${statSync(folder).gid}:\n`)
      expect(await groupOf(folder, file)).toBe('workshop')
      expect(await groupOf(join(folder, 'missing'), file)).toBeNull()
      expect(await groupOf(folder, join(folder, 'missing'))).toBeNull()
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})
