import type { ByteSource } from '#acquisition/byteSource.ts'
import { Trouble } from '#contract/errors.ts'
import { benchTaken } from '../benchOccupation.ts'
import type { DeviceLink } from './deviceLink.ts'
import { isVirtual } from './sourceFacts.ts'

/** The virtual press loads its next specimen now. Throws Trouble `unsupported` for a real one, `conflict` while the bench is taken. */
export function loadVirtual(source: ByteSource, isTaken: boolean): void {
  if (!isVirtual(source))
    throw new Trouble(
      'unsupported',
      'Only the virtual amplifier can load a specimen by itself.',
      'Turn the press, or connect the virtual amplifier.',
    )
  if (isTaken) throw new Trouble('conflict', benchTaken, 'Finish that first.')
  source.loadNow()
}

/** Hangs weights of so many newtons on the virtual cell. Throws Trouble `unsupported` for a real one. */
export function putVirtualWeights(source: ByteSource, forceN: number): void {
  if (!isVirtual(source))
    throw new Trouble(
      'unsupported',
      'Only the virtual amplifier can hang weights by itself.',
      'Hang the weights on the cell, or connect the virtual amplifier.',
    )
  source.putWeights(forceN)
}

/** A virtual press, where one is connected, stands still or may load again. */
export function holdPress(link: Pick<DeviceLink, 'connection' | 'source'>, held: boolean): void {
  const source = link.connection().status === 'open' ? link.source() : null
  if (isVirtual(source)) source.holdPress(held)
}
