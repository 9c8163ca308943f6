import type { OddDevice } from './oddBench.ts'
import {
  checked,
  checkedLine,
  columns,
  crc,
  crcLine,
  forceAt,
  good,
  idle,
  loadsToN,
  number,
  scatter,
  usOf,
} from './signals.ts'

const caught = { zero: true, peaksN: [loadsToN] } as const
const quiet = { ...caught, said: [] } as const
const nothing = (...said: RegExp[]) => ({ zero: false, peaksN: [], said })
const notUnderstood = /lines not understood/
const inN = (i: number) => (forceAt(i / 80) + scatter(i) / 100).toFixed(2)

const units: OddDevice[] = [
  {
    name: 'one early line in another unit',
    lineFormat: number,
    send: (i) => (i < 2 ? '5 g\n' : `${good(i)}\n`),
    expected: { ...caught, said: [notUnderstood] },
  },
  {
    name: 'early lines in grams, then newtons',
    lineFormat: number,
    send: (i) => (i < 40 ? '5 g\n' : `${inN(i)} N\n`),
    expected: { ...caught, said: [notUnderstood] },
  },
  {
    name: 'two units in turn',
    lineFormat: number,
    send: (i) => (i % 2 === 1 ? `${inN(i)} N\n` : '5 g\n'),
    expected: { ...caught, said: [notUnderstood], within: 20 },
  },
  {
    name: 'another unit from 4 s on',
    lineFormat: number,
    send: (i) => (i < 320 ? '12.1 g\n' : `${inN(i)} N\n`),
    expected: { ...caught, said: [notUnderstood] },
  },
  {
    name: 'another unit in the midst of a loading',
    lineFormat: number,
    lengthS: 14,
    send: (i) => (i < 640 ? `${inN(i)} N\n` : '5.1 g\n'),
    expected: { zero: true, peaksN: [], said: [notUnderstood] },
  },
  { name: 'newtons', lineFormat: number, send: (i) => `${inN(i)} N\r\n`, expected: quiet },
  {
    name: 'newtons in a column',
    lineFormat: columns('time_us', 'force_N'),
    send: (i) => `${usOf(i)};${inN(i)}\n`,
    expected: quiet,
  },
]

const ends: OddDevice[] = [
  {
    name: 'CR alone',
    lineFormat: number,
    send: (i) => `${good(i)}\r`,
    expected: nothing(/does not end its lines with a line feed/),
  },
  { name: 'CR and LF', lineFormat: number, send: (i) => `${good(i)}\r\n`, expected: quiet },
  { name: 'LF and CR', lineFormat: number, send: (i) => `${good(i)}\n\r`, expected: quiet },
  { name: 'two CR and LF', lineFormat: number, send: (i) => `${good(i)}\r\r\n`, expected: quiet },
  { name: 'empty lines between', lineFormat: number, send: (i) => `\n\n${good(i)}\n\r\n`, expected: quiet },
  {
    name: 'NUL before the line end',
    lineFormat: number,
    send: (i) => `${good(i)}\0\n`,
    expected: nothing(/Bytes arrive/),
  },
  { name: 'NULs alone', lineFormat: number, send: () => '\0\0\0\0', expected: nothing(/baud/) },
  { name: 'one endless line', lineFormat: number, send: () => '123456 ', expected: nothing(/line feed/) },
  {
    name: 'a line of 10,000 letters now and then',
    lineFormat: number,
    send: (i) => (i % 160 === 5 ? `${'x'.repeat(10_000)}\n` : `${good(i)}\n`),
    expected: { ...caught, said: [notUnderstood], within: 15 },
  },
  {
    name: 'noise of the line',
    lineFormat: checked,
    send: (_i, random) => String.fromCharCode(...Array.from({ length: 20 }, () => random.wholeBetween(128, 255))),
    expected: nothing(/baud rate is probably wrong/),
  },
]

const contents: OddDevice[] = [
  { name: 'words alone', lineFormat: number, send: () => 'sensor fault\n', expected: nothing(/fit no format/) },
  {
    name: 'a greeting, then numbers',
    lineFormat: number,
    send: (i) => (i === 1 ? 'amplifier ready\n' : `${good(i)}\n`),
    expected: { ...caught, said: [notUnderstood] },
  },
  {
    name: 'decimal commas',
    lineFormat: number,
    send: (i) => `${inN(i).replace('.', ',')}\n`,
    expected: nothing(/Bytes arrive/),
  },
  {
    name: 'nan now and then',
    lineFormat: number,
    send: (i) => (i % 40 === 9 ? 'nan\n' : `${good(i)}\n`),
    expected: { ...caught, said: [notUnderstood], within: 15 },
  },
  { name: 'nan alone', lineFormat: number, send: () => 'nan\n', expected: nothing(/Bytes arrive/) },
  { name: 'inf alone', lineFormat: number, send: () => 'inf\n-inf\n', expected: nothing(/Bytes arrive/) },
  {
    name: 'numbers with an exponent',
    lineFormat: number,
    send: (i) => `${good(i).toExponential(8)}\n`,
    expected: quiet,
  },
  {
    name: 'whole numbers beyond 2^53',
    lineFormat: number,
    send: () => '9007199254740993\n',
    expected: { zero: false, peaksN: [], said: [/Bytes arrive|half the rated load|end of its range/] },
  },
  {
    name: 'numbers of 400 digits',
    lineFormat: number,
    send: () => `${'9'.repeat(400)}\n`,
    expected: nothing(/Bytes arrive/),
  },
  {
    name: 'checked lines with a wrong check value',
    lineFormat: checked,
    send: (i) => checkedLine(i, usOf(i), good(i)).replace(/\*..\n/, '*ZZ\n'),
    expected: nothing(/Bytes arrive/),
  },
  {
    name: 'checked: a twentieth of the lines is damaged',
    lineFormat: checked,
    send: (i) =>
      i % 20 === 7 ? checkedLine(i, usOf(i), good(i)).replace('$BL', '$BX') : checkedLine(i, usOf(i), good(i)),
    expected: { ...caught, said: [notUnderstood, /samples are missing/], within: 15 },
  },
  {
    name: 'crc: a twentieth of the lines has two wrong digits',
    lineFormat: crc,
    send: (i) => {
      const line = crcLine(i, usOf(i), good(i))
      // Both digits changed alike: an exclusive or would not see it.
      return i % 20 === 7 ? line.replace(/(\d)(\d)\*/, (_, a, b) => `${a ^ 1}${b ^ 1}*`) : line
    },
    expected: { ...caught, said: [notUnderstood, /samples are missing/], within: 15 },
  },
  {
    name: 'checked lines, read as numbers',
    lineFormat: number,
    send: (i) => checkedLine(i, usOf(i), idle(i)),
    expected: nothing(/line format checked/),
  },
  {
    name: 'numbers, read as checked lines',
    lineFormat: checked,
    send: (i) => `${idle(i)}\n`,
    expected: nothing(/line format number/),
  },
  {
    name: 'columns, one of them missing now and then',
    lineFormat: columns('time_us', 'counts'),
    send: (i) => (i % 40 === 3 ? `${usOf(i)}\n` : `${usOf(i)},${good(i)}\n`),
    expected: { ...caught, said: [notUnderstood], within: 15 },
  },
]

/** Devices whose lines are odd. */
export const oddLines: readonly OddDevice[] = [...units, ...ends, ...contents]
