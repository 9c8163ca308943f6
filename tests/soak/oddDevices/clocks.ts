import type { OddDevice } from './oddBench.ts'
import { checked, checkedLine, columns, crc, crcLine, good, idle, loadsToN, number, usOf } from './signals.ts'

const caught = { zero: true, peaksN: [loadsToN] } as const
const quiet = { ...caught, said: [], restarts: 0, missing: 0 } as const
const timed = columns('time_us', 'counts')
const numbered = columns('seq', 'counts')
const stands = [/clock stands still/, /timed by their arrival/]
const slow = [/1,000 times too slow.*milliseconds where microseconds/, /timed by their arrival/]

const soundOnes: OddDevice[] = [
  { name: 'sound: times', lineFormat: timed, send: (i) => `${usOf(i)},${good(i)}\n`, expected: quiet },
  { name: 'sound: checked', lineFormat: checked, send: (i) => checkedLine(i, usOf(i), good(i)), expected: quiet },
  { name: 'sound: crc', lineFormat: crc, send: (i) => crcLine(i, usOf(i), good(i)), expected: quiet },
  { name: 'sound: numbers alone', lineFormat: number, send: (i) => `${good(i)}\n`, expected: quiet },
  { name: 'sound: sequence alone', lineFormat: numbered, send: (i) => `${i},${good(i)}\n`, expected: quiet },
  {
    name: 'sound: clock and sequence end on the way',
    lineFormat: checked,
    send: (i) => checkedLine((2 ** 32 - 700 + i) % 2 ** 32, usOf(i, 2 ** 32 - 8_500_000), good(i)),
    expected: quiet,
  },
  {
    name: 'sound: each line comes twice',
    lineFormat: checked,
    send: (i) => checkedLine(i, usOf(i), good(i)).repeat(2),
    expected: quiet,
  },
]

const wrongTimes: OddDevice[] = [
  ...[5_000_000, 0].map((us) => ({
    name: `time stuck at ${us}`,
    lineFormat: timed,
    send: (i: number) => `${us},${good(i)}\n`,
    expected: { ...caught, said: stands, missing: 0 },
  })),
  {
    name: 'checked: time stuck',
    lineFormat: checked,
    send: (i) => checkedLine(i, 12_345, good(i)),
    expected: { ...caught, said: stands, missing: 0 },
  },
  {
    name: 'milliseconds stuck',
    lineFormat: columns('time_ms', 'counts'),
    send: (i) => `77,${good(i)}\n`,
    expected: { ...caught, said: stands },
  },
  {
    name: 'seconds stuck',
    lineFormat: columns('time_s', 'counts'),
    send: (i) => `1.5,${good(i)}\n`,
    expected: { ...caught, said: stands },
  },
  {
    name: 'whole seconds',
    lineFormat: columns('time_s', 'counts'),
    send: (i) => `${Math.floor(i / 80)},${good(i)}\n`,
    expected: { ...caught, said: stands },
  },
  {
    name: 'time stops at 4 s',
    lineFormat: timed,
    send: (i) => `${usOf(Math.min(i, 320))},${good(i)}\n`,
    expected: { ...caught, said: stands },
  },
  {
    name: 'ms in place of us',
    lineFormat: timed,
    send: (i) => `${Math.floor(12.5 * i)},${good(i)}\n`,
    expected: { ...caught, said: slow, missing: 0 },
  },
  {
    name: 'checked: ms in place of us',
    lineFormat: checked,
    send: (i) => checkedLine(i, Math.floor(12.5 * i), good(i)),
    expected: { ...caught, said: slow, missing: 0 },
  },
  {
    name: 'crc: time stuck',
    lineFormat: crc,
    send: (i) => crcLine(i, 12_345, good(i)),
    expected: { ...caught, said: stands, missing: 0 },
  },
  {
    name: 's in place of us',
    lineFormat: timed,
    send: (i) => `${(i / 80).toFixed(4)},${good(i)}\n`,
    expected: { ...caught, said: [/1,000,000 times too slow\./] },
  },
  {
    name: 'us in place of ms',
    lineFormat: columns('time_ms', 'counts'),
    send: (i) => `${usOf(i)},${good(i)}\n`,
    expected: { ...caught, said: [/1,000 times too fast.*microseconds where milliseconds/], restarts: 0 },
  },
  {
    name: 'us in place of ms, a thousand a second',
    lineFormat: columns('time_ms', 'counts'),
    rateHz: 1000,
    send: (i) => `${1000 * i},${good(i, 1000)}\n`,
    expected: { ...caught, said: [/1,000 times too fast/], restarts: 0 },
  },
  {
    name: 'ms in place of s',
    lineFormat: columns('time_s', 'counts'),
    send: (i) => `${12.5 * i},${good(i)}\n`,
    expected: { ...caught, said: [/1,000 times too fast/], restarts: 0 },
  },
  ...[4_000_000_000, 2 ** 32 - 1].map((us) => ({
    name: `time falls from ${us}`,
    lineFormat: timed,
    send: (i: number) => `${us - 12_500 * i},${good(i)}\n`,
    expected: { ...caught, said: [/clock keeps falling back/], restarts: 0 },
  })),
  {
    name: 'checked: time falls',
    lineFormat: checked,
    send: (i) => checkedLine(i, 4_000_000_000 - 12_500 * i, good(i)),
    expected: { ...caught, said: [/clock keeps falling back/] },
  },
  {
    name: 'times at random',
    lineFormat: timed,
    send: (i, random) => `${random.wholeBetween(0, 2 ** 32 - 1)},${good(i)}\n`,
    expected: { ...caught, said: [/clock keeps falling back/] },
  },
  {
    name: 'time to and fro',
    lineFormat: timed,
    send: (i) => `${usOf(i + (i % 2) * 4)},${good(i)}\n`,
    expected: { ...caught, said: [/clock keeps falling back/] },
  },
]

const wrongNumbers: OddDevice[] = [
  {
    name: 'checked: sequence stuck',
    lineFormat: checked,
    send: (i) => checkedLine(7, usOf(i), good(i)),
    expected: { ...caught, said: [/sequence numbers do not change/, /by the time between readings/], missing: 0 },
  },
  {
    name: 'sequence stuck',
    lineFormat: numbered,
    send: (i) => `7,${good(i)}\n`,
    expected: { ...caught, said: [/sequence numbers do not change/] },
  },
  {
    name: 'checked: sequence falls',
    lineFormat: checked,
    send: (i) => checkedLine(1_000_000 - i, usOf(i), good(i)),
    expected: { ...caught, said: [/sequence numbers keep falling back/] },
  },
  {
    name: 'sequence falls',
    lineFormat: numbered,
    send: (i) => `${1_000_000 - i},${good(i)}\n`,
    expected: { ...caught, said: [/sequence numbers keep falling back/] },
  },
  {
    name: 'sequence at random',
    lineFormat: numbered,
    send: (i, random) => `${random.wholeBetween(0, 2 ** 32 - 1)},${good(i)}\n`,
    expected: { ...caught, said: [/sequence numbers keep falling back/] },
  },
  {
    name: 'checked: sequence and time stuck',
    lineFormat: checked,
    send: (i) => checkedLine(0, 0, good(i)),
    expected: { ...caught, said: [/do not change.*clock stands still/], notSaid: [/line format/] },
  },
  ...[8, 16, 24].map((bits) => ({
    name: `sequence of ${bits} bits`,
    lineFormat: numbered,
    send: (i: number) => `${(2 ** bits - 200 + i) % 2 ** bits},${good(i)}\n`,
    expected: quiet,
  })),
  {
    name: 'sequence of 8 bits beside a time',
    lineFormat: columns('seq', 'time_us', 'counts'),
    send: (i) => `${i % 256},${usOf(i)},${good(i)}\n`,
    expected: quiet,
  },
]

const restarted = { ...caught, said: [/device restarted/], restarts: 1, missing: 0 }
/** Restarts at 4 s, silent for so many readings, of which the last are lost. */
const again = (i: number, silent = 0, lost = 0) =>
  i < 320 ? 9000 + i : i < 320 + silent + lost ? null : i - 320 - silent

const restarts: OddDevice[] = [
  {
    name: 'restart: checked',
    lineFormat: checked,
    send: (i) => checkedLine(again(i)!, i < 320 ? usOf(i, 9e8) : usOf(i - 320, 1000), good(i)),
    expected: restarted,
  },
  {
    name: 'restart: times',
    lineFormat: timed,
    send: (i) => `${i < 320 ? usOf(i, 9e8) : usOf(i - 320)},${good(i)}\n`,
    expected: restarted,
  },
  { name: 'restart: sequence', lineFormat: numbered, send: (i) => `${again(i)},${good(i)}\n`, expected: restarted },
  {
    name: 'restart: silent for half a second',
    lineFormat: checked,
    send: (i) =>
      again(i, 40) === null ? '' : checkedLine(again(i, 40)!, i < 320 ? usOf(i, 9e8) : usOf(i - 360), good(i)),
    expected: restarted,
  },
  {
    name: 'restart: its first two hundred lines are lost',
    lineFormat: checked,
    lengthS: 20,
    send: (i) =>
      again(i, 0, 100) === null ? '' : checkedLine(again(i)!, i < 320 ? usOf(i, 9e8) : usOf(i - 320), good(i)),
    expected: restarted,
  },
  {
    name: 'restart: words before the first line',
    lineFormat: checked,
    send: (i) =>
      i === 320 ? 'ready\nversion 3\n' : checkedLine(again(i)!, i < 320 ? usOf(i, 9e8) : usOf(i - 320), good(i)),
    expected: { ...restarted, said: [/device restarted/, /lines not understood/] },
  },
  {
    name: 'restart: after three quarters of an hour',
    lineFormat: timed,
    send: (i) => `${i < 320 ? usOf(i, 2.7e9) : usOf(i - 320)},${good(i)}\n`,
    expected: restarted,
  },
  {
    name: 'restart: three times',
    lineFormat: checked,
    send: (i) => checkedLine(9000 + (i % 300), usOf(i % 300, i < 300 ? 9e8 : 100_000), good(i)),
    expected: { ...caught, said: [/device restarted/] },
  },
]

const lost: OddDevice[] = [
  {
    name: 'every tenth line is lost',
    lineFormat: checked,
    send: (i) => (i % 10 === 3 ? '' : checkedLine(i, usOf(i), good(i))),
    expected: { ...caught, said: [/samples are missing/], within: 10, flags: ['gap'] },
  },
  {
    name: 'sends half as often from 4 s on',
    lineFormat: timed,
    send: (i) => (i > 320 && i % 2 === 1 ? '' : `${usOf(i)},${good(i)}\n`),
    expected: { ...caught, said: [/samples are missing/], within: 15 },
  },
  {
    name: 'nothing at all',
    lineFormat: number,
    send: () => '',
    expected: { zero: false, peaksN: [], said: [/Nothing has arrived/] },
  },
  {
    name: 'falls silent at 5 s',
    lineFormat: number,
    send: (i) => (i < 400 ? `${idle(i)}\n` : ''),
    expected: { zero: true, peaksN: [], said: [/Nothing has arrived/] },
  },
]

/** Devices whose times or numbers are wrong, restart, or have holes. */
export const oddClocks: readonly OddDevice[] = [...soundOnes, ...wrongTimes, ...wrongNumbers, ...restarts, ...lost]
