import type { DeviceFault, SignalState } from '#contract/bench/bench.ts'
import { Trouble } from '#contract/errors.ts'

/** A pace this near a thousandth or a thousand, as a factor, is that of another unit. */
const nearThousand = 3

/** What is wrong with the numbers that the device gives its readings, what is used instead, and what to do; null: nothing. */
export function deviceTrouble({ deviceFaults }: Pick<SignalState, 'deviceFaults'>): Trouble | null {
  if (deviceFaults.length === 0) return null
  const isTimed = deviceFaults.some(({ kind }) => kind.startsWith('time'))
  const instead = isTimed
    ? 'The readings are timed by their arrival at this computer instead.'
    : 'Missing readings are found by the time between readings instead.'
  return new Trouble(
    'not-readable',
    `${deviceFaults.map(wrongWith).join(' ')} ${instead}`,
    'Breaks are recorded all the same. For better times mend the program of the amplifier, then connect again.',
  )
}

function wrongWith({ kind, pace }: DeviceFault): string {
  switch (kind) {
    case 'time-stands':
      return "The amplifier's clock stands still from one reading to the next."
    case 'time-falls':
      return "The amplifier's clock keeps falling back."
    case 'time-slow':
      return `The amplifier's clock runs ${times(1 / pace!)} times too slow${isThousand(1 / pace!) ? ': it seems to send milliseconds where microseconds are due, or seconds where milliseconds are' : ''}.`
    case 'time-fast':
      return `The amplifier's clock runs ${times(pace!)} times too fast${isThousand(pace!) ? ': it seems to send microseconds where milliseconds are due, or milliseconds where seconds are' : ''}.`
    case 'sequence-stands':
      return "The amplifier's sequence numbers do not change."
    case 'sequence-falls':
      return "The amplifier's sequence numbers keep falling back."
  }
}

const isThousand = (factor: number) => factor > 1000 / nearThousand && factor < 1000 * nearThousand

/** A figure of one digit, as all that is known. */
const times = (factor: number) => Number(factor.toPrecision(1)).toLocaleString('en-GB')
