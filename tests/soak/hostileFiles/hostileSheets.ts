import { Readable } from 'node:stream'
import yazl from 'yazl'
import { drawnWorkbook } from '#tests/exchange/sheets/drawnWorkbook.ts'

/** A file that was made to do harm, under what is wrong with it. `large`: reading it takes seconds. */
export type HostileFile = { name: string; large?: boolean; make(): Buffer | Promise<Buffer> }

const text = (place: string, words: string) => `<c r="${place}" t="inlineStr"><is><t>${words}</t></is></c>`
const head = `<row r="1">${text('A1', 'Adhesive')}${text('B1', 'Load (lbf)')}</row>`
const rows = (xml: string) => drawnWorkbook({ sheetXml: `<sheetData>${head}${xml}</sheetData>` })
const sheetPart = 'xl/worksheets/sheet1.xml'
const inPart = (part: string, content: string | Buffer) => drawnWorkbook({ parts: { [part]: content } })

/** A packed file of one large part, which is drawn while it is packed. */
async function packed(part: string, start: string, piece: string, times: number, end: string): Promise<Buffer> {
  function* pieces() {
    yield start
    for (let i = 0; i < times; i++) yield piece
    yield end
  }
  const zip = new yazl.ZipFile()
  const relation = (id: string, type: string, target: string) =>
    `<Relationship Id="${id}" Type="x/${type}" Target="${target}"/>`
  const small: Record<string, string> = {
    '_rels/.rels': `<Relationships>${relation('r1', 'officeDocument', 'xl/workbook.xml')}</Relationships>`,
    'xl/workbook.xml': '<workbook xmlns:r="r"><sheets><sheet name="S" r:id="r1"/></sheets></workbook>',
    'xl/_rels/workbook.xml.rels': `<Relationships>${relation('r1', 'worksheet', 'worksheets/sheet1.xml')}${relation('r2', 'styles', 'styles.xml')}${relation('r3', 'sharedStrings', 'sharedStrings.xml')}</Relationships>`,
    [sheetPart]: `<worksheet><sheetData>${head}</sheetData></worksheet>`,
    'xl/styles.xml': '<styleSheet/>',
    'xl/sharedStrings.xml': '<sst/>',
  }
  for (const [name, content] of Object.entries(small)) if (name !== part) zip.addBuffer(Buffer.from(content), name)
  zip.addReadStream(Readable.from(pieces()), part)
  zip.end()
  return bytesOf(zip)
}

/** Changes two bytes of every entry of the central directory of a packed file. */
async function withEntries(change: (bytes: Buffer, entry: number) => void): Promise<Buffer> {
  const bytes = Buffer.from(await rows(''))
  const mark = Buffer.from('PK\u0001\u0002', 'latin1')
  for (let at = bytes.indexOf(mark); at >= 0; at = bytes.indexOf(mark, at + 4)) change(bytes, at)
  return bytes
}

const relations = (target: string) =>
  `<Relationships><Relationship Id="r1" Type="x/worksheet" Target="${target}"/></Relationships>`
const declared = (entity: string) =>
  `<!DOCTYPE l [${entity}]><worksheet><sheetData><row r="1">${text('A1', '&b;')}</row></sheetData></worksheet>`

/** Files of sheets that were made to do harm. */
export const hostileSheets: readonly HostileFile[] = [
  { name: 'the last cell', make: () => rows('<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>') },
  { name: 'a row beyond the last', make: () => rows('<row r="1048577"><c r="A1048577"><v>1</v></c></row>') },
  { name: 'a column beyond the last', make: () => rows('<row r="2"><c r="XFE2"><v>1</v></c></row>') },
  {
    name: 'a lone cell in the last column of every row',
    large: true,
    make: () =>
      rows(
        Array.from({ length: 100_000 }, (_, i) => `<row r="${i + 2}"><c r="XFD${i + 2}"><v>1</v></c></row>`).join(''),
      ),
  },
  { name: 'elements called as every object calls its own', make: () => rows('<__proto__/><constructor/><toString/>') },
  { name: 'odd attributes', make: () => rows('<row __proto__="1" r="2"><c constructor="3" r="A2"><v>1</v></c></row>') },
  { name: 'entities within entities', make: () => inPart(sheetPart, declared('<!ENTITY a "ha"><!ENTITY b "&a;&a;">')) },
  { name: 'an entity outside', make: () => inPart(sheetPart, declared('<!ENTITY b SYSTEM "file:///etc/passwd">')) },
  { name: 'characters that are none', make: () => rows(`<row r="2">${text('A2', '&#0;&#xD800;&#x110000;')}</row>`) },
  { name: 'half of a character', make: () => rows(`<row r="2">${text('A2', '_xD800_')}<c r="B2"><v>5</v></c></row>`) },
  { name: 'a relation that is no address', make: () => inPart('xl/_rels/workbook.xml.rels', relations('http://[')) },
  {
    name: 'a relation that climbs',
    make: () => inPart('xl/_rels/workbook.xml.rels', relations('../../../etc/passwd')),
  },
  { name: 'a relation outside', make: () => inPart('xl/_rels/workbook.xml.rels', relations('file:///etc/passwd')) },
  {
    name: 'numbers that are none',
    make: () =>
      rows(
        ['NaN', '1e308', '-1e308', '1e999', '0x10', '1e-320', ' 5 ']
          .map((number, i) => `<row r="${i + 2}">${text(`A${i + 2}`, 'a')}<c r="B${i + 2}"><v>${number}</v></c></row>`)
          .join(''),
      ),
  },
  {
    name: 'styles and texts that are not there',
    make: () =>
      rows('<row r="2"><c r="A2" s="-1" t="s"><v>-1</v></c><c r="B2" s="length" t="s"><v>length</v></c></row>'),
  },
  { name: 'a row twice', make: () => rows('<row r="1"><c r="A1"><v>1</v></c></row>') },
  { name: 'cells in cells', make: () => rows('<row r="2"><c r="A2"><c r="B2"><v>5</v></c></c></row>') },
  { name: 'a part with a name that climbs', make: climbing },
  { name: 'nothing in it', make: () => Buffer.from(`PK\u0005\u0006${'\0'.repeat(18)}`, 'latin1') },
  { name: 'four bytes', make: () => Buffer.from('PK\u0003\u0004', 'latin1') },
  { name: 'cut off', make: async () => (await rows('')).subarray(0, 700) },
  { name: 'a wrong checksum', make: () => withEntries((bytes, at) => bytes.writeUInt32LE(0xdeadbeef, at + 16)) },
  { name: 'locked', make: () => withEntries((bytes, at) => bytes.writeUInt16LE(1, at + 8)) },
  { name: 'packed in an unknown way', make: () => withEntries((bytes, at) => bytes.writeUInt16LE(99, at + 10)) },
  { name: 'a sheet that is packed itself', make: async () => inPart(sheetPart, await rows('')) },
  { name: 'another encoding', make: () => inPart(sheetPart, Buffer.from('\ufeff<worksheet/>', 'utf16le')) },
  {
    name: 'days that never were',
    make: () =>
      drawnWorkbook({
        stylesXml: '<cellXfs><xf/><xf numFmtId="14"/></cellXfs>',
        sheetXml: `<sheetData>${[60, 0, -1, 59.9999999, 2958466, 1e308].map((day, i) => `<row r="${i + 1}"><c r="A${i + 1}" s="1"><v>${day}</v></c></row>`).join('')}</sheetData>`,
      }),
  },
  {
    name: 'an attribute of 100 MB',
    large: true,
    make: () => packed(sheetPart, '<worksheet a="', 'a'.repeat(1e6), 100, '"/>'),
  },
  {
    name: 'a comment of 100 MB',
    large: true,
    make: () => packed(sheetPart, '<worksheet><!--', 'a'.repeat(1e6), 100, '-->'),
  },
  {
    name: 'ten million elements in each other',
    large: true,
    make: () => packed(sheetPart, '<worksheet>', '<a>'.repeat(1e5), 100, ''),
  },
  {
    name: 'ten million styles',
    large: true,
    make: () => packed('xl/styles.xml', '<styleSheet><cellXfs>', '<xf/>'.repeat(1e5), 100, '</cellXfs></styleSheet>'),
  },
  {
    name: 'twenty million empty texts',
    large: true,
    make: () => packed('xl/sharedStrings.xml', '<sst>', '<si/>'.repeat(1e5), 200, '</sst>'),
  },
  {
    name: 'a text of 300 MB',
    large: true,
    make: () =>
      packed(
        sheetPart,
        `<worksheet><sheetData><row r="1"><c t="str"><v>`,
        'a'.repeat(1e6),
        300,
        '</v></c></row></sheetData></worksheet>',
      ),
  },
  {
    name: 'two gigabytes of nothing',
    large: true,
    make: () => packed(sheetPart, '<worksheet>', '\0'.repeat(1e7), 205, ''),
  },
]

async function climbing(): Promise<Buffer> {
  const zip = new yazl.ZipFile()
  zip.addBuffer(Buffer.from('x'), 'aa/xx')
  zip.end()
  const bytes = await bytesOf(zip)
  return Buffer.from(bytes.toString('latin1').replaceAll('aa/xx', '../xx'), 'latin1')
}

async function bytesOf(zip: yazl.ZipFile): Promise<Buffer> {
  const pieces: Buffer[] = []
  for await (const piece of zip.outputStream) pieces.push(piece as Buffer)
  return Buffer.concat(pieces)
}
