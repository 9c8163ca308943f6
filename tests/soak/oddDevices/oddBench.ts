import { setImmediate } from 'node:timers/promises'
import type { ByteListener, ByteSource } from '#acquisition/byteSource.ts'
import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import type { BenchState } from '#contract/bench/bench.ts'
import { type LineFormatChoice, sourceChoice } from '#contract/bench/source.ts'
import { preferencesChange } from '#contract/settings/settings.ts'
import { createRandom, type RandomStream } from '#domain/numbers/random.ts'
import type { CaptureLogEntry } from '#engine/bench/capture/captureLog.ts'
import { benchEngine } from '#tests/fakes/benchEngine.ts'
import { tareWarningWords } from '#words/bench/tareWarningWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

/** A device that is not as it should be, and what a careful program makes of it. */
export type OddDevice = {
  name: string
  lineFormat: LineFormatChoice
  /** Readings a second, and seconds. */
  rateHz?: number
  lengthS?: number
  capacityN?: number | null
  nPerCount?: number | null
  endCodes?: [number, number] | null
  /** What it sends for reading i, line end and all; nothing: silence. */
  send(i: number, random: RandomStream): string
  expected: Expectation
}

/** What is not named is not looked at, except where it says so. */
export type Expectation = {
  /** Whether there is a zero at the end. */
  zero?: boolean
  /** Peaks of the breaks in the archive, N, each within `within`; nothing else may be taken for a break. */
  peaksN: readonly number[]
  within?: number
  /** Flags that each break has, and has not. */
  flags?: readonly string[]
  noFlags?: readonly string[]
  /** Each is found in what is said to the person; `[]`: nothing is said at all. */
  said: readonly RegExp[]
  notSaid?: readonly RegExp[]
  restarts?: number
  missing?: number
  /** An alarm of overload; none unless it is named. */
  alarm?: boolean
}

/** What a device led to. */
export type OddOutcome = { state: BenchState; said: string[]; log: CaptureLogEntry[]; alarmed: boolean }

const everyS = 0.05

/** Lets devices be heard one after the other, on one archive, as fast as the computer can. */
export async function createOddBench(archive: Archive) {
  let device: OddDevice | null = null
  const log: CaptureLogEntry[] = []
  const { engine, clock } = await benchEngine(
    archive,
    {},
    { openSource: (clock) => sourceOf(device!, clock), log: (entry) => log.push(entry) },
  )
  const said = new Set<string>()
  let alarmed = false
  engine.subscribe('trouble', ({ message, hint }) => said.add(`${message} ${hint}`))
  engine.subscribe('bench.state', (state) => {
    hear(state, said)
    alarmed ||= state.overload === 'alarm'
  })

  async function hearDevice(odd: OddDevice): Promise<OddOutcome> {
    device = odd
    const { lineFormat, capacityN = 25_000, nPerCount = 0.01, endCodes = [-8_388_608, 8_388_607] } = odd
    const { detection } = await archive.preferences()
    await engine.handlers['preferences.set'](
      preferencesChange.parse({ capacityN, nPerCount, detection: { ...detection, endCodes } }),
    )
    log.length = 0
    said.clear()
    alarmed = false
    await engine.bench.connect(sourceChoice.parse({ kind: 'serial', path: '/dev/ttyTEST', lineFormat }))
    for (let s = 0; s < (odd.lengthS ?? 18); s += 1) {
      for (let k = 0; k < 10; k++) clock.step(0.1)
      await setImmediate()
      await engine.bench.written()
    }
    const state = engine.bench.state()
    hear(state, said)
    if (state.tare === null && state.signal.unstableBecause !== null) said.add(state.signal.unstableBecause)
    await engine.bench.disconnect()
    await engine.bench.written()
    return { state, said: [...said], log: [...log], alarmed }
  }

  return { hear: hearDevice, close: () => engine.bench.close() }
}

/** What stands on the bench's screen besides figures. */
function hear({ connection: { problem }, tareWarning, signal }: BenchState, said: Set<string>): void {
  if (problem !== null) said.add(`${problem.message} ${problem.hint}`)
  if (tareWarning !== null) said.add(tareWarningWords(tareWarning, quantitiesIn('SI').force))
  if (signal.rejectedLines > 0) said.add('lines not understood')
  if (signal.missingSamples > 0) said.add('samples are missing')
  if (signal.restarts > 0) said.add('the device restarted')
}

function sourceOf(device: OddDevice, clock: Clock): ByteSource {
  const random = createRandom(7)
  const rateHz = device.rateHz ?? 80
  let listener: ByteListener | null = null
  let callOff = () => {}
  let beganS = 0
  let sent = 0
  const send = () => {
    let text = ''
    for (; sent < (clock.nowS() - beganS) * rateHz; sent++) text += device.send(sent, random)
    // Each letter is a byte: a device may send any.
    if (text !== '')
      listener?.bytes(
        Uint8Array.from(text, (letter) => letter.charCodeAt(0)),
        clock.nowS(),
      )
    callOff = clock.after(everyS, send)
  }
  return {
    label: `odd device: ${device.name}`,
    async open(newListener) {
      listener = newListener
      beganS = clock.nowS()
      callOff = clock.after(everyS, send)
    },
    async close() {
      listener = null
      callOff()
    },
  }
}
