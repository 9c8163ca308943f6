import type { HostileFile } from './hostileSheets.ts'

const blanks = (count: number) => ' '.repeat(count)
const of = (text: string, encoding: BufferEncoding = 'utf8') => Buffer.from(text, encoding)
const marked = (...parts: Buffer[]) => Buffer.concat([Buffer.from([0xff, 0xfe]), ...parts])
const readings =
  (...lines: string[]) =>
  () =>
    of(`Time,Temp\n${lines.join('\n')}\n`)

/** Tables of text and files of loggers that were made to do harm. */
export const hostileTables: readonly HostileFile[] = [
  { name: 'a million columns', large: true, make: () => of(`${'a,'.repeat(1_000_000)}\n1\n`) },
  { name: 'four hundred thousand empty columns', make: () => of(`${','.repeat(400_000)}\n1\n`) },
  { name: 'zeros at once', make: () => of('Adhesive,Load\nA\0B,5\n') },
  { name: 'zeros further down', make: () => of(`Adhesive,Load\n${'A,5\n'.repeat(5000)}A\0B,5\n`) },
  {
    name: 'two bytes a character, and one byte more',
    make: () => marked(of('Adhesive,Load\nA,5\n', 'utf16le'), of('A')),
  },
  { name: 'half of a character in two bytes', make: () => marked(of('Adhesive,Load\nA\ud800B,5\n', 'utf16le')) },
  { name: 'half of a character in UTF-8', make: () => Buffer.from('Adhesive,Load\nA\xed\xa0\x80,5\n', 'latin1') },
  { name: 'line ends of every kind', make: () => of('Adhesive,Load\r\nA,5\nB,6\rC,7\n\r\nD,8\r\r\nE,9') },
  { name: 'a line of 100 MB', large: true, make: () => Buffer.alloc(100_000_000, 'a') },
  { name: 'a line of 30 MB in fields', large: true, make: () => Buffer.alloc(30_000_000, 'a,') },
  { name: '30 MB of quotes', large: true, make: () => Buffer.alloc(30_000_000, '"') },
  {
    name: 'a quote that is never closed',
    large: true,
    make: () => Buffer.concat([of('"'), Buffer.alloc(30_000_000, '\n')]),
  },
  { name: '30 MB of empty lines', large: true, make: () => Buffer.alloc(30_000_000, '\n') },
  { name: 'nothing', make: () => Buffer.alloc(0) },
  { name: 'a mark and nothing behind it', make: () => Buffer.from([0xef, 0xbb, 0xbf]) },
  { name: 'headings called as every object calls its own', make: () => of('__proto__,constructor,Load\nA,B,5\n') },
  { name: 'blanks without end', make: () => of(`Time,Temp\na${blanks(200_000)}b,x${blanks(200_000)}y\n`) },
  { name: 'blanks in headings', make: () => of(`time${blanks(200_000)}x,temp${blanks(200_000)}x\n1,2\n`) },
  { name: 'digits without end', make: () => of(`Time,Temp\n${'1/'.repeat(200_000)},${'1 '.repeat(200_000)}\n`) },
  { name: 'formulas', make: () => of('Adhesive,Load\n"=cmd|\'/c x\'!A1",5\n@SUM(1),+5\n-1,-5\n') },
  {
    name: 'times that go back, twice and to come',
    make: readings(
      '2026-01-02 00:00,5',
      '2026-01-01 00:00,5',
      '2026-01-01 00:00,6',
      '9999-12-31 23:59,5',
      '0000-01-01 00:00,5',
    ),
  },
  {
    name: 'temperatures that are none',
    make: readings(
      '2026-01-01 00:00,NaN',
      '2026-01-01 01:00,1e308',
      '2026-01-01 02:00,5 constructor',
      '2026-01-01 03:00,-',
    ),
  },
  {
    name: 'days that do not exist',
    make: readings('2026-02-29 00:00,5', '2026-02-28 24:00,5', '2026-02-28 23:60,5', '2026-02-28T23:59:60Z,5'),
  },
]
