import { existsSync } from 'node:fs'
import { readdir, realpath } from 'node:fs/promises'
import { delimiter, join } from 'node:path'
import { SerialPort } from 'serialport'
import type { SerialPortInfo } from '#contract/bench/bench.ts'

function bare(path: string): SerialPortInfo {
  return { path, manufacturer: null, serialNumber: null, vendorId: null, productId: null }
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return (await readdir(folder)).sort()
  } catch {
    // No such folder: no such ports.
    return []
  }
}

/** Ports of USB adapters by the names of their device files, for a Linux that has no udev. */
export async function scanDeviceFiles(deviceFolder: string): Promise<SerialPortInfo[]> {
  const byId = join(deviceFolder, 'serial', 'by-id')
  const linked = await Promise.all((await namesIn(byId)).map((name) => realpath(join(byId, name)).catch(() => null)))
  const named = (await namesIn(deviceFolder)).filter((name) => /^tty(USB|ACM)\d+$/.test(name))
  const found = new Set([...linked.filter((path) => path !== null), ...named.map((name) => join(deviceFolder, name))])
  return [...found].sort().map(bare)
}

function onPath(program: string): boolean {
  return (process.env.PATH ?? '').split(delimiter).some((folder) => folder !== '' && existsSync(join(folder, program)))
}

/** The serial ports of this computer, those of USB adapters first. */
export async function listSerialPorts(): Promise<SerialPortInfo[]> {
  // The library asks udevadm and fails, in some versions beyond any catch, where there is none.
  if (process.platform === 'linux' && !onPath('udevadm')) return await scanDeviceFiles('/dev')
  const ports = (await SerialPort.list()).map((port) => ({
    path: port.path,
    manufacturer: port.manufacturer ?? null,
    serialNumber: port.serialNumber ?? null,
    vendorId: port.vendorId ?? null,
    productId: port.productId ?? null,
  }))
  const rank = (port: SerialPortInfo) => (port.vendorId === null ? 1 : 0)
  return ports.sort((a, b) => rank(a) - rank(b) || a.path.localeCompare(b.path))
}
