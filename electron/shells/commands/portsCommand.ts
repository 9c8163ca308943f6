// Held by tests/shells/commands/runCommandLine.spec.ts.
import type { Command } from './command.ts'
import { jsonLine } from './jsonLine.ts'

export const portsCommand: Command = {
  name: 'ports',
  operands: '',
  summary: 'Lists the serial ports of this computer.',
  options: {},
  usesArchive: false,
  details: ['With --json each port is {path, manufacturer, serialNumber, vendorId, productId}; null where unknown.'],
  async run({ io, json }) {
    const { listRealPorts } = await import('#engine/core/realParts.ts')
    const ports = await listRealPorts()
    for (const port of ports) {
      const words = [port.manufacturer, port.serialNumber].filter((word) => word !== null)
      await io.out(json ? jsonLine(port) : `${[port.path, ...words].join('  ')}\n`)
    }
    if (ports.length === 0 && !json) io.err('No serial port was found. Is the amplifier plugged in?\n')
    return 0
  },
}
