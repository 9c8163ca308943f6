import type { Clock } from '#acquisition/clock.ts'
import { proposeFormat, silenceAdvice } from '#acquisition/serial/proposeFormat.ts'
import type { LineFormatChoice } from '#contract/bench/source.ts'
import { Trouble } from '#contract/errors.ts'

/** Slower devices than one reading in three seconds are none that a break could be caught with. */
const silentAfterS = 3
/** So many bytes since the last reading are kept to judge what they are. */
const judgedBytes = 4096
/** Fewer bytes than this, since the last reading, may be the rest of a line. */
const leastUnreadable = 40

/**
 * Notices when a connection gives nothing, or nothing that can be read. `onChange` is called when `silent` or `problem`
 * may have changed. `baudRate` null: the device has none.
 */
export function createSilenceWatch(
  clock: Clock,
  format: LineFormatChoice,
  baudRate: number | null,
  onChange: () => void,
) {
  let bytesAtS = clock.nowS()
  let readingAtS = clock.nowS()
  let bytesSinceReading = 0
  let kept: Uint8Array[] = []
  let keptBytes = 0
  let keptFromS = 0
  let keptUntilS = 0
  let silent = true
  let state: 'fine' | 'silent' | 'unreadable' = 'fine'
  let problem: Trouble | null = null
  let callOff = clock.after(1, tick)

  function tick() {
    callOff = clock.after(1, tick)
    const nowS = clock.nowS()
    const wait = nowS - readingAtS > silentAfterS
    const before = { state, silent }
    if (!wait) state = 'fine'
    else if (nowS - bytesAtS > silentAfterS) state = 'silent'
    else if (bytesSinceReading > leastUnreadable) state = 'unreadable'
    silent ||= wait
    if (state === before.state && silent === before.silent) return
    if (state !== before.state) problem = problemNow()
    onChange()
  }

  function problemNow(): Trouble | null {
    if (state === 'fine') return null
    if (state === 'silent')
      return new Trouble('not-readable', `Nothing has arrived for ${silentAfterS} seconds.`, silenceAdvice)
    const { proposal, advice } = proposeFormat(joined(), keptUntilS - keptFromS, baudRate)
    if (proposal !== null && isSame(proposal, format))
      return new Trouble(
        'not-readable',
        `Lines of the format "${format.name}" arrive, but none of them gives a reading yet.`,
        'Wait some seconds. If it stays so, look at the numbers in the raw lines by listening to the port.',
      )
    const looks =
      proposal === null
        ? advice
        : `They look like the line format ${[proposal.name, ...proposal.columns].join(' ')}: connect again with that one.`
    return new Trouble(
      'not-readable',
      `Bytes arrive, but none of them is a line of the format "${format.name}".`,
      `${looks} Listening to the port shows its raw lines.`,
    )
  }

  const isSame = (a: LineFormatChoice, b: LineFormatChoice) => a.name === b.name && `${a.columns}` === `${b.columns}`

  function joined(): Uint8Array {
    const bytes = new Uint8Array(keptBytes)
    let at = 0
    for (const chunk of kept) {
      bytes.set(chunk, at)
      at += chunk.length
    }
    return bytes
  }

  return {
    bytes(chunk: Uint8Array) {
      bytesAtS = clock.nowS()
      bytesSinceReading += chunk.length
      if (keptBytes >= judgedBytes) return
      if (keptBytes === 0) keptFromS = bytesAtS
      kept.push(chunk.slice())
      keptBytes += chunk.length
      keptUntilS = bytesAtS
    },
    reading() {
      readingAtS = clock.nowS()
      bytesSinceReading = 0
      kept = []
      keptBytes = 0
      if (!silent && state === 'fine') return
      silent = false
      state = 'fine'
      problem = null
      onChange()
    },
    silent: () => silent,
    problem: () => problem,
    stop: () => callOff(),
  }
}
