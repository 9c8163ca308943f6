import type { Clock } from '#acquisition/clock.ts'
import { Trouble } from '#contract/errors.ts'
import type { LineFormatChoice } from '#contract/records/settings.ts'

/** Slower devices than one reading in three seconds are none that a break could be caught with. */
const silentAfterS = 3

/**
 * Notices when a connection gives nothing, or nothing that can be read. `onChange` is called when `silent` or `problem`
 * may have changed.
 */
export function createSilenceWatch(clock: Clock, format: LineFormatChoice, onChange: () => void) {
  let bytesAtS = clock.nowS()
  let readingAtS = clock.nowS()
  let bytesSinceReading = 0
  let silent = true
  let problem: Trouble | null = null
  let callOff = clock.after(1, tick)

  function tick() {
    callOff = clock.after(1, tick)
    const nowS = clock.nowS()
    const wait = nowS - readingAtS > silentAfterS
    const unreadable = wait && bytesSinceReading > 40 && nowS - bytesAtS <= silentAfterS
    if ((silent || !wait) && unreadable === (problem !== null)) return
    silent ||= wait
    problem = unreadable ? unreadableTrouble(format) : null
    onChange()
  }

  return {
    bytes(count: number) {
      bytesAtS = clock.nowS()
      bytesSinceReading += count
    },
    reading() {
      readingAtS = clock.nowS()
      bytesSinceReading = 0
      if (!silent && problem === null) return
      silent = false
      problem = null
      onChange()
    },
    silent: () => silent,
    problem: () => problem,
    stop: () => callOff(),
  }
}

const unreadableTrouble = ({ name }: LineFormatChoice) =>
  new Trouble(
    'not-readable',
    `Bytes arrive, but none of them is a line of the format "${name}".`,
    'Most likely the baud rate or the line format is another one: listen to the port to have them proposed.',
  )
