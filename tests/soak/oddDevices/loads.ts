import type { OddDevice } from './oddBench.ts'
import { checked, checkedLine, forceAt, good, idle, loadsToN, number, scatter, usOf, zeroCounts } from './signals.ts'

const caught = { zero: true, peaksN: [loadsToN], noFlags: ['over-capacity', 'clipped'] } as const
const spike = 7_300_000

/** Good but for spikes at these readings. */
const spiked = (name: string, at: (i: number) => boolean, by = spike): OddDevice => ({
  name,
  lineFormat: checked,
  send: (i) => checkedLine(i, usOf(i), at(i) ? zeroCounts + by : good(i)),
  expected: { ...caught, said: [], notSaid: [/bench reads/], alarm: false },
})

/** A load of so many newtons at a time, s, sent as counts. */
const load = (name: string, forceOf: (timeS: number) => number, more: Partial<OddDevice>): OddDevice => ({
  name,
  lineFormat: number,
  lengthS: 25,
  send: (i) => `${Math.round(zeroCounts + 100 * forceOf(i / 80)) + scatter(i)}\n`,
  expected: { zero: true, peaksN: [], said: [] },
  ...more,
})

/** Rises by 1000 N/s from 6 s on to a load, stays there, and breaks at a time, s. */
const held = (toN: number, untilS: number) => (timeS: number) =>
  timeS < 6 || timeS > untilS ? 0 : Math.min(toN, 1000 * (timeS - 6))

const clippedAt = (code: number, more: Partial<OddDevice> = {}): OddDevice => ({
  name: `an amplifier that ends at ${code}${more.endCodes === null ? ', codes not known' : more.endCodes === undefined ? '' : ', its end code'}`,
  lineFormat: number,
  send: (i) => `${Math.min(code, good(i))}\n`,
  expected: { zero: true, peaksN: [(code - zeroCounts) / 100], within: 10, flags: ['clipped'], said: [] },
  ...more,
})

/** Devices whose load is none, or more than the cell can bear. */
export const oddLoads: readonly OddDevice[] = [
  spiked('a spike of 73 kN at rest', (i) => i === 400),
  spiked('a spike of −73 kN at rest', (i) => i === 400, -spike),
  spiked('spikes of two readings', (i) => i === 400 || i === 401),
  spiked('a spike under load', (i) => i === 700),
  spiked('spikes of −73 kN under load', (i) => i === 700 || i === 730, -spike),
  spiked('a spike every two seconds', (i) => i % 160 === 5),
  spiked('a spike in the midst of the fall', (i) => i === 801),
  spiked('a spike as the very first reading', (i) => i === 1),
  load('an overload of 26 kN', (timeS) => (timeS < 6 || timeS > 12 ? 0 : Math.min(26_000, 6000 * (timeS - 6))), {
    expected: { zero: true, peaksN: [26_000], within: 10, said: [], alarm: true, flags: ['over-capacity'] },
  }),
  clippedAt(zeroCounts + 300_000),
  clippedAt(zeroCounts + 300_000, { endCodes: null }),
  clippedAt(zeroCounts + 200_000),
  clippedAt(zeroCounts + 300_000, { endCodes: [-8_388_608, zeroCounts + 300_000] }),
  load('a load that is held for four seconds', held(3000, 13), {
    expected: { zero: true, peaksN: [3000], within: 5, said: [], noFlags: ['clipped'] },
  }),
  {
    name: 'a converter of steps of 20 N',
    lineFormat: number,
    send: (i) => `${2000 * Math.round(good(i) / 2000)}\n`,
    expected: { ...caught, within: 25, said: [] },
  },
  load('a cell wired in reverse', (timeS) => (timeS < 6 || timeS > 26 ? 0 : -200 * (timeS - 6)), {
    lengthS: 32,
    expected: { zero: true, peaksN: [], said: [/wired in reverse/] },
  }),
  load(
    'a load that is let down slowly',
    (timeS) => forceAt(Math.min(timeS, 10)) * (timeS > 10 ? Math.max(0, 1 - (timeS - 10) / 8) : 1),
    {},
  ),
  load('a jump of 3 kN that stays', (timeS) => (timeS < 6 ? 0 : 3000), {}),
  load('a knock of three readings', (timeS) => (timeS > 6 && timeS < 6.05 ? 5000 : 0), {}),
  {
    name: 'checked: nothing but rest',
    lineFormat: checked,
    send: (i) => checkedLine(i, usOf(i), idle(i)),
    expected: { zero: true, peaksN: [], said: [], missing: 0 },
  },
]
