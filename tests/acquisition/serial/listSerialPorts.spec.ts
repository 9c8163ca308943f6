import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { listSerialPorts, scanDeviceFiles } from '#acquisition/serial/listSerialPorts.ts'

describe('list of serial ports', () => {
  it('finds USB adapters by their device files, each once, where there is no udev', async () => {
    const folder = realpathSync(mkdtempSync(join(tmpdir(), 'breakledger-')))
    try {
      mkdirSync(join(folder, 'serial', 'by-id'), { recursive: true })
      for (const name of ['ttyUSB0', 'ttyACM1', 'ttyAMA0', 'tty1', 'null']) writeFileSync(join(folder, name), '')
      symlinkSync('../../ttyUSB0', join(folder, 'serial', 'by-id', 'usb-adapter-port0'))
      symlinkSync('../../ttyAMA0', join(folder, 'serial', 'by-id', 'usb-other-port0'))
      symlinkSync('../../ttyUSB7', join(folder, 'serial', 'by-id', 'usb-gone-port0'))
      const ports = await scanDeviceFiles(folder)
      expect(ports.map((port) => port.path)).toEqual(
        ['ttyACM1', 'ttyAMA0', 'ttyUSB0'].map((name) => join(folder, name)),
      )
      expect(ports[0]).toMatchObject({ manufacturer: null, serialNumber: null, vendorId: null, productId: null })
    } finally {
      rmSync(folder, { recursive: true })
    }
  })

  it('is empty where there are no device files at all', async () => {
    expect(await scanDeviceFiles(join(tmpdir(), 'breakledger-no-such-folder'))).toEqual([])
  })

  it('can be had on this computer, with and without the system tool that the library asks', async () => {
    const path = process.env.PATH
    const withTool = await listSerialPorts()
    try {
      process.env.PATH = ''
      const without = await listSerialPorts()
      const known = new Set(withTool.map((port) => port.path))
      for (const port of without) expect(known.size === 0 || known.has(port.path)).toBe(true)
    } finally {
      process.env.PATH = path
    }
    for (const port of withTool) expect(Object.values(port)).not.toContain(undefined)
  })
})
