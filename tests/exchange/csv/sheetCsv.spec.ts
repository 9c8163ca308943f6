import { describe, expect, it } from 'vitest'
import { readSheetCsv } from '#exchange/csv/sheetCsv.ts'

const unsaid = { delimiter: null, encoding: null, headerRow: 1 }
const read = (bytes: string | Buffer, said: Partial<Parameters<typeof readSheetCsv>[2]> = {}) =>
  readSheetCsv('a.csv', Buffer.from(bytes as string), { ...unsaid, ...said })
const texts = async (bytes: string | Buffer, said = {}) =>
  (await read(bytes, said)).rows.map(({ row, cells }) => [row, ...Array.from(cells, (cell) => cell?.text ?? '')])

describe('a table of text', () => {
  it('counts rows as a sheet program does: empty ones and the headings count, line ends within quotes do not', async () => {
    const { rows, lastRow } = await read('a,b\n"x\ny",1\n\n,,\nz,2\n')
    expect(rows.map(({ row }) => row)).toEqual([1, 2, 5])
    expect(lastRow).toBe(5)
  })

  it.each([
    ['LF', 'a,b\n1,2\n3,4'],
    ['CRLF', 'a,b\r\n1,2\r\n3,4\r\n'],
    ['CR', 'a,b\r1,2\r3,4\r'],
    ['a mark before it', '\ufeffa,b\n1,2\n3,4\n'],
  ])('may have %s', async (_, text) => {
    expect(await texts(text)).toEqual([
      [1, 'a', 'b'],
      [2, '1', '2'],
      [3, '3', '4'],
    ])
  })

  it('keeps lines that begin with #, and a quote within a field', async () => {
    expect(await texts('Number,Lap\n#7,6" lap\n"say ""no""",1\n')).toEqual([
      [1, 'Number', 'Lap'],
      [2, '#7', '6" lap'],
      [3, 'say "no"', '1'],
    ])
  })

  it.each([
    ['semicolons with decimal commas', 'a;b\nx;12,5\ny;13,5\n', ';'],
    ['tabs', 'a\tb\n1,5\t2\n', '\t'],
    ['commas beside a semicolon in a remark', 'a,b\n1,x;y\n2,z\n', ','],
    ['nothing, and decimal commas', 'Load\n12,5\n13,5\n14,5\n', ','],
  ])('is parted by %s', async (_, text, delimiter) => {
    const { text: found, rows } = await read(text)
    expect(found?.delimiter).toBe(delimiter)
    expect(rows[0]!.cells.length).toBe(text.startsWith('Load') ? 1 : 2)
  })

  it('is parted as the person said', async () => {
    expect(await texts('a;b,c\n', { delimiter: ',' })).toEqual([[1, 'a;b', 'c']])
  })

  const written = 'Kleber,Ort\nHä,Öl\n'
  it.each([
    ['utf-8', Buffer.from(written)],
    ['windows-1252', Buffer.from(written, 'latin1')],
    ['utf-16le', Buffer.from(`\ufeff${written}`, 'utf16le')],
    ['utf-16le', Buffer.from('Number,Load\nx,1\n', 'utf16le')],
    ['utf-16be', Buffer.from(`\ufeff${written}`, 'utf16le').swap16()],
  ])('is understood in %s', async (encoding, bytes) => {
    const { text, rows } = await read(bytes)
    expect(text?.encoding).toBe(encoding)
    expect(rows[1]!.cells[0]!.text).toMatch(/^(Hä|x)$/)
  })

  it('is read in the characters that the person names', async () => {
    expect(await texts(Buffer.from('c5a1', 'hex'), { encoding: 'windows-1252' })).toEqual([[1, 'Å¡']])
  })

  it('keeps a character of four bytes that lies across two pieces', async () => {
    const filler = 'x'.repeat(262_142)
    expect((await texts(`${filler}😀\n`))[0]![1]).toBe(`${filler}😀`)
  })

  it('is refused where a quote opens and is not closed, by the row of the quote and not of the end', async () => {
    await expect(read('a,b\n1,2\n"3,4\n5,6\n')).rejects.toMatchObject({
      code: 'not-readable',
      message: 'a.csv, row 3: a quote opens in this row and is not closed.',
    })
    const long = `a,b\n"${'1,2\n'.repeat(400_000)}`
    await expect(read(long)).rejects.toThrow('a.csv, row 2: a quote opens')
  })

  it('is refused where it is no text', async () => {
    await expect(read(Buffer.from([1, 0, 0, 0, 7, 0, 0, 0, 9, 9, 9]))).rejects.toThrow('neither a table of text')
  })

  it('stops when it is no longer wanted', async () => {
    const stop = new AbortController()
    stop.abort()
    await expect(readSheetCsv('a.csv', Buffer.from('a\n'), unsaid, stop.signal)).rejects.toThrow('aborted')
  })
})
