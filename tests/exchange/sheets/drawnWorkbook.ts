import yazl from 'yazl'

/** What a drawn file of sheets holds besides the XML of its cells; the rest is as small as the format allows. */
export type DrawnWorkbook = {
  /** Inside <sheetData> and what follows it. */
  sheetXml?: string
  /** Inside <styleSheet>. */
  stylesXml?: string
  /** Inside <sst>. */
  stringsXml?: string
  workbookPr?: string
  /** Whole parts beside or in place of those above. */
  parts?: Readonly<Record<string, string | Buffer>>
}

const relationship = (id: string, type: string, target: string) =>
  `<Relationship Id="${id}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/${type}" Target="${target}"/>`
const relationships = (...all: string[]) =>
  `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${all.join('')}</Relationships>`

/** The bytes of a file of one sheet, "Sheet 1", drawn from XML, for what no library writes. */
export async function drawnWorkbook(drawn: DrawnWorkbook): Promise<Buffer> {
  const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
  const parts: Record<string, string | Buffer> = {
    '_rels/.rels': relationships(relationship('r1', 'officeDocument', 'xl/workbook.xml')),
    'xl/workbook.xml': `<workbook ${main} xmlns:r="r">${drawn.workbookPr ?? ''}<sheets><sheet name="Sheet 1" sheetId="1" r:id="r1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': relationships(
      relationship('r1', 'worksheet', 'worksheets/sheet1.xml'),
      relationship('r2', 'styles', 'styles.xml'),
      relationship('r3', 'sharedStrings', '/xl/sharedStrings.xml'),
    ),
    'xl/worksheets/sheet1.xml': `<worksheet ${main}>${drawn.sheetXml ?? '<sheetData/>'}</worksheet>`,
    'xl/styles.xml': `<styleSheet ${main}>${drawn.stylesXml ?? ''}</styleSheet>`,
    'xl/sharedStrings.xml': `<sst ${main}>${drawn.stringsXml ?? ''}</sst>`,
    ...drawn.parts,
  }
  const zip = new yazl.ZipFile()
  for (const [name, content] of Object.entries(parts))
    zip.addBuffer(typeof content === 'string' ? Buffer.from(content) : content, name)
  zip.end()
  const pieces: Buffer[] = []
  for await (const piece of zip.outputStream) pieces.push(piece as Buffer)
  return Buffer.concat(pieces)
}
