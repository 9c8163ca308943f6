import type { OddDevice } from './oddBench.ts'
import { checked, checkedLine, forceAt, good, idle, loadsToN, number, scatter, usOf, zeroCounts } from './signals.ts'

const refused = (...said: RegExp[]) => ({ zero: false, peaksN: [], said: [/zero has not been taken/, ...said] })
const endOfRange = /stands at the end of its range/
const scatters = /scatter by more than 1 %/
const tooFar = /beyond half the rated load/

/** Counts of a force, N. */
const countsOf = (forceN: number) => Math.round(zeroCounts + 100 * forceN)

const sine = (amplitudeN: number, hz: number, expected: OddDevice['expected']): OddDevice => ({
  name: `a sine of ${amplitudeN} N at ${hz} Hz`,
  lineFormat: number,
  lengthS: 30,
  send: (i) => `${countsOf(amplitudeN * Math.sin((2 * Math.PI * hz * i) / 80)) + scatter(i)}\n`,
  expected,
})

const noise = (sdN: number, expected: OddDevice['expected']): OddDevice => ({
  name: `noise of ${sdN} N`,
  lineFormat: number,
  send: (i, random) => `${countsOf(forceAt(i / 80) + sdN * random.normal())}\n`,
  expected,
})

const constant = (code: number, more: Partial<OddDevice> = {}): OddDevice => ({
  name: `constant ${code}${more.endCodes === null ? ', codes not known' : ''}${more.nPerCount === null ? ', no scale' : ''}${more.capacityN === null ? ', no rated load' : ''}`,
  lineFormat: number,
  send: () => `${code}\n`,
  expected: refused(endOfRange),
  ...more,
})

/** Devices of which no zero may be taken, or only just. */
export const oddZeros: readonly OddDevice[] = [
  constant(8_388_607),
  constant(-8_388_608),
  constant(9_000_000),
  constant(8_388_607, { endCodes: null }),
  constant(-8_388_608, { endCodes: null }),
  constant(32_767, { endCodes: null }),
  constant(16_777_215, { endCodes: null }),
  constant(2_147_483_647, { endCodes: null, nPerCount: null }),
  constant(8_388_607, { endCodes: null, nPerCount: null }),
  constant(4_000_000, { endCodes: null, expected: refused(tooFar) }),
  constant(-4_000_000, { endCodes: null, expected: refused(tooFar) }),
  constant(4_000_000, { nPerCount: null, expected: { zero: true, peaksN: [], said: [] } }),
  constant(4_000_000, { endCodes: null, capacityN: null, expected: { zero: true, peaksN: [], said: [] } }),
  {
    name: 'checked: constant at the end code',
    lineFormat: checked,
    send: (i) => checkedLine(i, usOf(i), 8_388_607),
    expected: refused(endOfRange),
  },
  ...[null, [-8_388_608, 8_388_607] as [number, number]].map((endCodes) => ({
    name: `full scale, alternating${endCodes === null ? ', codes not known' : ''}`,
    lineFormat: number,
    endCodes,
    send: (i: number) => `${i % 2 === 0 ? 8_388_607 : -8_388_608}\n`,
    expected: refused(endOfRange),
  })),
  {
    name: 'alternating just below full scale',
    lineFormat: number,
    send: (i) => `${i % 2 === 0 ? 8_388_000 : -8_388_000}\n`,
    expected: refused(scatters),
  },
  {
    name: 'a loose wire: the end code now and then',
    lineFormat: number,
    send: (i) => `${i % 23 === 5 ? 8_388_607 : idle(i)}\n`,
    expected: refused(endOfRange),
  },
  {
    name: 'an offset of 80 % of the rated load',
    lineFormat: number,
    send: (i) => `${countsOf(20_000) + scatter(i)}\n`,
    expected: refused(tooFar),
  },
  {
    name: 'an offset of 40 % of the rated load',
    lineFormat: number,
    send: (i) => `${good(i) + 1_000_000 - zeroCounts}\n`,
    expected: { zero: true, peaksN: [loadsToN], said: [] },
  },
  noise(10_000, refused(scatters)),
  noise(2000, refused(scatters)),
  noise(400, refused(scatters)),
  noise(100, { zero: true, peaksN: [loadsToN], within: 400, said: [] }),
  sine(2000, 0.5, { zero: false, peaksN: [], said: [] }),
  sine(2000, 1, refused()),
  ...[3, 10, 30].map((hz) => sine(2000, hz, refused(scatters))),
  ...[0.02, 0.05, 0.1, 0.2].map((hz) => sine(2000, hz, { peaksN: [], said: [] })),
  ...[0.3, 1, 3].map((hz) => sine(400, hz, { peaksN: [], said: [] })),
  sine(200, 1, { peaksN: [], said: [] }),
  sine(20, 3, { zero: true, peaksN: [], said: [] }),
  {
    name: 'a square of 2 kN each second',
    lineFormat: number,
    send: (i) => `${countsOf(Math.floor(i / 40) % 2 === 0 ? 0 : 2000) + scatter(i)}\n`,
    expected: { zero: false, peaksN: [], said: [/zero has not been taken/] },
  },
  {
    name: 'a force that rises without end',
    lineFormat: number,
    send: (i) => `${countsOf((50 * i) / 80) + scatter(i)}\n`,
    expected: refused(/still rising/),
  },
  {
    name: 'whole numbers without any noise',
    lineFormat: number,
    send: (i) => `${countsOf(forceAt(i / 80))}\n`,
    expected: { zero: true, peaksN: [loadsToN], said: [] },
  },
]
