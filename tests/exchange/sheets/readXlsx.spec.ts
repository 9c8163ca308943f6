import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readXlsx } from '#exchange/sheets/readXlsx.ts'
import type { Cell } from '#exchange/sheets/sheet.ts'
import { drawnWorkbook } from './drawnWorkbook.ts'

const sample = (name: string) => readFileSync(new URL(`../../../samples/sheets/${name}`, import.meta.url))
const read = (bytes: Buffer, sheet: string | null = null) => readXlsx('a.xlsx', bytes, sheet)
const firstRow = async (drawn: Parameters<typeof drawnWorkbook>[0]) =>
  (await read(await drawnWorkbook(drawn))).sheet.rows[0]!.cells as Cell[]
const rowOf = (cells: string) => `<sheetData><row r="1">${cells}</row></sheetData>`

describe('a sheet that openpyxl wrote', () => {
  it('gives the first sheet that is not hidden, and names all of them', async () => {
    const { sheets, sheet } = await read(sample('odd-cells.xlsx'))
    expect(sheets).toEqual([
      { name: 'Old', hidden: true },
      { name: 'Odd', hidden: false },
    ])
    expect(sheet.name).toBe('Odd')
    expect((await read(sample('odd-cells.xlsx'), 'Old')).sheet.rows[1]!.cells[0]!.text).toBe('hidden-1')
  })

  it('keeps the zeros of a number, shows a percentage, and gives a merged cell to every row that it covers', async () => {
    const { rows } = (await read(sample('odd-cells.xlsx'))).sheet
    expect(rows[1]!.cells[0]).toMatchObject({ kind: 'number', text: '007', number: 7 })
    expect(rows[1]!.cells[3]).toMatchObject({ number: 25, unit: '%', text: '25 %' })
    expect(rows.slice(1, 5).map(({ cells }) => cells[1]?.text)).toEqual([
      'casein C1',
      'casein C1',
      'casein C1',
      'epoxy E4',
    ])
  })

  it('tells dates, errors and truths from numbers', async () => {
    const { rows } = (await read(sample('odd-cells.xlsx'))).sheet
    expect(rows[1]!.cells[4]).toMatchObject({ kind: 'date', text: '2020-02-29' })
    expect(rows[4]!.cells[2]).toMatchObject({ kind: 'error', text: '#DIV/0!' })
    expect(rows[5]!.cells[2]).toMatchObject({ kind: 'date', text: '2024-04-03' })
    expect(rows[7]!.cells[2]).toMatchObject({ kind: 'truth', text: 'TRUE' })
  })

  it('names a plain colour, a theme colour with its tint, one of the old palette and a hatching', async () => {
    const { rows } = (await read(sample('odd-cells.xlsx'))).sheet
    expect(rows.slice(1, 6).map(({ cells }) => cells[2]!.fill)).toEqual([
      'FFFF00',
      'theme 4 +0.60',
      'FFFF00',
      'pattern',
      null,
    ])
  })

  it('counts coloured rows without a value to its length alone', async () => {
    const { rows, lastRow } = (await read(sample('odd-cells.xlsx'))).sheet
    expect([rows.at(-1)!.row, lastRow]).toEqual([8, 14])
  })

  it('counts days from 1904 where the file says so', async () => {
    const { rows } = (await read(sample('from-1904.xlsx'))).sheet
    expect(rows[1]!.cells[1]).toMatchObject({ kind: 'date', text: '1998-07-05' })
  })
})

describe('a sheet that was made to do harm', () => {
  const refused = async (drawn: Parameters<typeof drawnWorkbook>[0]) =>
    read(await drawnWorkbook(drawn)).then(
      () => 'read',
      ({ code, message }) => `${code}: ${message}`,
    )

  it('is refused before a value of it fills the memory', async () => {
    const long = 'a'.repeat(200_000)
    expect(await refused({ sheetXml: `<sheetData><row r="${long}"/></sheetData>` })).toMatch(/^not-readable: .*damaged/)
    expect(await refused({ sheetXml: `<!--${long}--><sheetData/>` })).toMatch(/^not-readable: .*damaged/)
    expect(await refused({ sheetXml: `<${long}/>` })).toMatch(/^not-readable: .*damaged/)
  })

  it('is refused where elements lie deeper in each other, or say more of themselves, than any sheet needs', async () => {
    expect(await refused({ sheetXml: `<sheetData>${'<a>'.repeat(300)}` })).toContain('lie within each other')
    const attributes = Array.from({ length: 1100 }, (_, i) => `a${i}="1"`).join(' ')
    expect(await refused({ sheetXml: `<sheetData><row ${attributes}/></sheetData>` })).toContain('attributes')
  })

  it('is refused where it lists more styles than any program writes', async () => {
    expect(await refused({ stylesXml: `<cellXfs>${'<xf/>'.repeat(1_000_001)}</cellXfs>` })).toContain(
      'it holds more than any sheet program writes',
    )
  })

  it('keeps a long text whole, whatever pieces it comes in', async () => {
    const long = 'ab'.repeat(100_000)
    const [cell] = await firstRow({ sheetXml: rowOf(`<c r="A1" t="inlineStr"><is><t>${long}</t></is></c>`) })
    expect(cell!.text).toBe(long)
  })

  it('may name its elements as the language names what every object has', async () => {
    const cells = await firstRow({
      sheetXml: `<__proto__/><constructor/><__defineGetter__/>${rowOf('<c r="A1"><v>1</v></c>')}`,
    })
    expect(cells).toMatchObject([{ number: 1 }])
  })

  it('leads nowhere by a relation that is no address', async () => {
    const rels = '<Relationships><Relationship Id="r1" Type="x/worksheet" Target="http://["/></Relationships>'
    expect(await refused({ parts: { 'xl/_rels/workbook.xml.rels': rels } })).toBe(
      'not-readable: a.xlsx: the file is damaged (the part http://[ is missing).',
    )
  })

  it('names some of a thousand sheets where the one that is wanted is not among them', async () => {
    const sheets = Array.from({ length: 1000 }, (_, i) => `<sheet name="S${i}" r:id="r1"/>`).join('')
    const bytes = await drawnWorkbook({
      parts: { 'xl/workbook.xml': `<workbook xmlns:r="r"><sheets>${sheets}</sheets></workbook>` },
    })
    const { hint } = await read(bytes, 'Results').catch((thrown) => thrown)
    expect(hint.length).toBeLessThan(200)
  })
})

describe('a sheet drawn from XML', () => {
  it('takes the stored value of a formula and says so; one without a stored value is no empty cell', async () => {
    const cells = await firstRow({
      sheetXml: rowOf(
        '<c r="A1"><f>1+1</f><v>2</v></c><c r="B1"><f>A1</f></c><c r="C1" t="str"><f>B1</f><v>two</v></c>',
      ),
    })
    expect(cells).toMatchObject([
      { kind: 'number', number: 2, formula: true },
      { kind: 'unstored', formula: true },
      { kind: 'text', text: 'two', formula: true },
    ])
  })

  it('reads shared and inline texts, rich ones whole, and leaves out how they are pronounced', async () => {
    const cells = await firstRow({
      stringsXml:
        '<si><t>one</t></si><si><r><t>ri</t></r><r><t xml:space="preserve">ch </t></r><rPh sb="0" eb="1"><t>no</t></rPh></si>',
      sheetXml: rowOf(
        '<c r="A1" t="s"><v>1</v></c><c r="B1" t="inlineStr"><is><t>in&amp;line_x000D_</t></is></c><c t="s"><v>0</v></c>',
      ),
    })
    expect(cells.map(({ text }) => text)).toEqual(['rich ', 'in&line\r', 'one'])
  })

  it('keeps the colour of an empty cell in a row that holds something', async () => {
    const stylesXml =
      '<fills><fill/><fill/><fill><patternFill patternType="solid"><fgColor rgb="FFFFA500"/></patternFill></fill></fills>' +
      '<cellXfs><xf/><xf fillId="2"/></cellXfs>'
    const cells = await firstRow({ stylesXml, sheetXml: rowOf('<c r="A1"><v>1</v></c><c r="B1" s="1"/>') })
    expect(cells[1]).toMatchObject({ kind: 'empty', fill: 'FFA500' })
  })

  it('passes over a chart, and refuses a file whose sheets are all hidden', async () => {
    const hidden = await drawnWorkbook({
      parts: {
        'xl/workbook.xml':
          '<workbook xmlns:r="r"><sheets><sheet name="Gone" state="veryHidden" r:id="r1"/></sheets></workbook>',
      },
    })
    await expect(read(hidden)).rejects.toMatchObject({ code: 'not-found', message: 'a.xlsx: every sheet is hidden.' })
  })

  it('keeps no cell of twenty thousand empty rows that have a format', async () => {
    const rows = Array.from(
      { length: 20_000 },
      (_, i) => `<row r="${i + 2}" spans="1:3"><c r="A${i + 2}" s="0"/></row>`,
    )
    const bytes = await drawnWorkbook({
      sheetXml: `<sheetData><row r="1"><c r="A1"><v>1</v></c></row>${rows.join('')}</sheetData>`,
    })
    const { sheet } = await read(bytes)
    expect([sheet.rows.length, sheet.lastRow]).toEqual([1, 20_001])
  })
})

describe('a file that does harm', () => {
  it('is refused where it unpacks to more than a gibibyte, before anything is unpacked', async () => {
    const bytes = await drawnWorkbook({})
    // The stated size of the last part (sharedStrings) in the central directory
    const entry = bytes.lastIndexOf(Buffer.from('504b0102', 'hex'))
    bytes.writeUInt32LE(2_000_000_000, entry + 24)
    await expect(read(bytes)).rejects.toThrow('would unpack to more than 1 GiB')
  })

  it('is refused where a part is larger than it says', async () => {
    const bytes = await drawnWorkbook({ sheetXml: rowOf(`<c r="A1"><v>${'1'.repeat(5000)}</v></c>`) })
    const names = ['xl/worksheets/sheet1.xml', 'xl/styles.xml'].map((name) => bytes.lastIndexOf(Buffer.from(name)))
    bytes.writeUInt32LE(100, names[0]! - 46 + 24)
    await expect(read(bytes)).rejects.toThrow('the file is damaged')
  })

  it('is refused where its XML declares entities, breaks off, or its rows run backwards', async () => {
    const bomb = '<!DOCTYPE w [<!ENTITY a "aaaa">]><worksheet><sheetData/></worksheet>'
    const broken = '<worksheet><sheetData><row r="1">'
    for (const xml of [bomb, broken])
      await expect(drawnWorkbook({ parts: { 'xl/worksheets/sheet1.xml': xml } }).then(read)).rejects.toThrow(
        'a part of the file is damaged',
      )
    await expect(
      drawnWorkbook({ sheetXml: '<sheetData><row r="2"/><row r="1"/></sheetData>' }).then(read),
    ).rejects.toThrow('row "1" of the sheet stands where none can be')
  })

  it('is refused where a part is encrypted, or it is packed but no workbook', async () => {
    const bytes = await drawnWorkbook({})
    for (let at = bytes.indexOf('PK\u0001\u0002'); at >= 0; at = bytes.indexOf('PK\u0001\u0002', at + 4))
      bytes.writeUInt16LE(bytes.readUInt16LE(at + 8) | 1, at + 8)
    await expect(read(bytes)).rejects.toThrow('locked with a password')
    const other = await drawnWorkbook({
      parts: { '_rels/.rels': '<Relationships/>', 'xl/workbook.xml': '<workbook/>' },
    })
    await expect(read(other)).rejects.toThrow('not one of sheets')
  })

  it('stops within a sheet when it is no longer wanted', async () => {
    const stop = new AbortController()
    stop.abort()
    await expect(readXlsx('a.xlsx', await drawnWorkbook({}), null, stop.signal)).rejects.toThrow('aborted')
  })
})
