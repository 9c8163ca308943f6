import type { BenchState } from '#contract/bench/bench.ts'

type Unused = NonNullable<BenchState['calibrationUnused']>

/** Why the calibration in force is not used on what is connected, in one sentence. */
export function unusedWords({ name, because, device, readingUnit }: Unused): string {
  switch (because) {
    case 'not-connected':
      return `“${name}” is in force and is used as soon as its amplifier is connected.`
    case 'other-device':
      return `“${name}” is in force, but was made with ${device === 'virtual' ? 'the virtual amplifier' : 'a real amplifier'} and is not used for the one that is connected.`
    case 'other-unit':
      return `“${name}” is in force, but is for readings in ${readingUnit}; this amplifier sends another unit, so it is not used.`
  }
}
