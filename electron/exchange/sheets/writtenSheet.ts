import { escapeText } from '#figures/drawing/escapeText.ts'
import { columnLetters } from './sheet.ts'
import { storedZip } from './storedZip.ts'

/** A cell as it is written: a text or a number, on a background of six hexadecimal digits where it has one; null: nothing. */
export type WrittenCell = string | number | { value: string | number; fill: string } | null

const relationship = (id: string, type: string, target: string) =>
  `<Relationship Id="${id}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/${type}" Target="${target}"/>`
const relationships = (all: string) =>
  `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${all}</Relationships>`
const sheetMl = 'application/vnd.openxmlformats-officedocument.spreadsheetml'
const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
const prolog = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'

/** The bytes of a file of one small sheet (.xlsx); the same rows give the same bytes. Source: ECMA-376 part 1, clause 18. */
export function writtenSheet(name: string, rows: readonly (readonly WrittenCell[])[]): Buffer {
  const fills = [...new Set(rows.flat().flatMap((cell) => (cell instanceof Object ? [cell.fill] : [])))]
  const parts = {
    '[Content_Types].xml': contentTypes,
    '_rels/.rels': relationships(relationship('r1', 'officeDocument', 'xl/workbook.xml')),
    'xl/workbook.xml': `<workbook ${main} xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="${escapeText(name)}" sheetId="1" r:id="r1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': relationships(
      relationship('r1', 'worksheet', 'worksheets/sheet1.xml') + relationship('r2', 'styles', 'styles.xml'),
    ),
    'xl/styles.xml': stylesXml(fills),
    'xl/worksheets/sheet1.xml': `<worksheet ${main}><sheetData>${rows.map((row, index) => rowXml(row, index + 1, fills)).join('')}</sheetData></worksheet>`,
  }
  return storedZip(Object.fromEntries(Object.entries(parts).map(([path, xml]) => [path, prolog + xml])))
}

const contentTypes =
  '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">' +
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
  `<Override PartName="/xl/workbook.xml" ContentType="${sheetMl}.sheet.main+xml"/>` +
  `<Override PartName="/xl/worksheets/sheet1.xml" ContentType="${sheetMl}.worksheet+xml"/>` +
  `<Override PartName="/xl/styles.xml" ContentType="${sheetMl}.styles+xml"/></Types>`

/** The format keeps the first two fills for itself. */
const ownFills = '<fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill>'

/** Style 0 is that of plain cells, then one for each fill. */
function stylesXml(fills: readonly string[]): string {
  const solid = fills.map(
    (fill) => `<fill><patternFill patternType="solid"><fgColor rgb="FF${fill}"/></patternFill></fill>`,
  )
  const filled = fills.map(
    (_fill, index) => `<xf fillId="${index + 2}" fontId="0" borderId="0" xfId="0" applyFill="1"/>`,
  )
  return (
    `<styleSheet ${main}><fonts count="1"><font/></fonts>` +
    `<fills count="${fills.length + 2}">${ownFills}${solid.join('')}</fills><borders count="1"><border/></borders>` +
    '<cellStyleXfs count="1"><xf fillId="0" fontId="0" borderId="0"/></cellStyleXfs>' +
    `<cellXfs count="${fills.length + 1}"><xf fillId="0" fontId="0" borderId="0" xfId="0"/>${filled.join('')}</cellXfs>` +
    '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>'
  )
}

function rowXml(row: readonly WrittenCell[], number: number, fills: readonly string[]): string {
  const cells = row.map((cell, column) => {
    if (cell === null) return ''
    const { value, fill } = cell instanceof Object ? cell : { value: cell, fill: null }
    const style = fill === null ? '' : ` s="${fills.indexOf(fill) + 1}"`
    const place = `r="${columnLetters(column)}${number}"${style}`
    return typeof value === 'number'
      ? `<c ${place}><v>${value}</v></c>`
      : `<c ${place} t="inlineStr"><is><t xml:space="preserve">${escapeText(value)}</t></is></c>`
  })
  return `<row r="${number}">${cells.join('')}</row>`
}
