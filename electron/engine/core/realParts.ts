// Held by tests/contract/realEngine.spec.ts.
import { mkdir } from 'node:fs/promises'
import { dirname } from 'node:path'
import { listSerialPorts } from '#acquisition/serial/listSerialPorts.ts'
import { createSerialSource } from '#acquisition/serial/serialSource.ts'
import { curvedCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import { createVirtualSource } from '#acquisition/virtual/virtualSource.ts'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import type { SerialPortInfo } from '#contract/bench/bench.ts'
import { Trouble } from '#contract/errors.ts'
import type { EngineParts } from './engine.ts'

/** Opens an archive for writing and makes it, with its folder, when it is not there. */
export async function openOwnArchive(path: string, program: string): Promise<Archive> {
  try {
    await mkdir(dirname(path), { recursive: true, mode: 0o700 })
  } catch (thrown) {
    const reason = thrown instanceof Error ? thrown.message : String(thrown)
    throw new Trouble(
      'denied',
      `The folder of the archive ${path} cannot be made (${reason}).`,
      'Choose a place that this user may write to.',
    )
  }
  return openArchive({ path, program })
}

/** The serial ports of this computer. */
export function listRealPorts(): Promise<SerialPortInfo[]> {
  return listSerialPorts()
}

/** A serial port or the virtual amplifier, as chosen. */
export const openRealSource: EngineParts['openSource'] = (choice, clock) => {
  if (choice.kind === 'serial') return createSerialSource(choice.path, choice.baudRate, clock)
  const { kind: _kind, ...bench } = choice
  // Where it loads only when asked, nobody knocks against it either.
  const undisturbed = bench.byItself ? {} : { knocksPerHour: 0 }
  // A cell as real ones are, so that a calibration has something to find; its own straight scale is only nearly right.
  return createVirtualSource({ ...bench, ...undisturbed, characteristic: curvedCharacteristic }, clock)
}
