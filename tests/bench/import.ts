import { execFile } from 'node:child_process'
import { createWriteStream, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { promisify } from 'node:util'
import yazl from 'yazl'
import { projectFolder } from '#shells/start/build.ts'
import type { Benchmark, Measurement } from './measurement.ts'

const rows = 20_000
const mostSeconds = 10
const headings = ['Number', 'Adhesive', 'Load', 'Area', 'Wood failure', 'Glued', 'Broken', 'Condition', 'Board', 'Note']

const mapping = {
  layout: 'row-per-specimen',
  fields: {
    number: { column: 'Number' },
    adhesive: { column: 'Adhesive' },
    load: { column: 'Load', unit: 'lbf' },
    area: { column: 'Area', unit: 'in2' },
    woodFailurePercent: { column: 'Wood failure' },
    gluedOn: { column: 'Glued' },
    brokenOn: { column: 'Broken' },
    exposure: { column: 'Condition' },
    board: { column: 'Board' },
    note: { column: 'Note' },
  },
}

/** Twenty thousand past results, brought into a new archive by a process of its own, beside a plain read of the same file. */
export const importBenchmark: Benchmark = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-bench-'))
  try {
    const [csv, xlsx, map] = ['blocks.csv', 'blocks.xlsx', 'map.json'].map((name) => join(folder, name)) as [
      string,
      string,
      string,
    ]
    writeFileSync(map, JSON.stringify(mapping))
    writeFileSync(csv, `${[headings, ...table()].map((row) => row.join(',')).join('\n')}\n`)
    await writeSheet(xlsx)
    const plain = await measured('plain', csv)
    const measurements: Measurement[] = []
    for (const file of [csv, xlsx]) {
      const kind = file === csv ? 'CSV' : '.xlsx'
      const done = await measured('import', file, map, join(folder, `${kind}.breakledger`))
      if (done.rows !== rows) throw new RangeError(`imported ${done.rows} rows of ${rows}`)
      const beside = (value: number, of: number) => ({ name: 'plain csv-parse read', value: of, times: of / value })
      measurements.push(
        {
          what: `${rows} rows of ${kind} imported`,
          ...{ value: done.seconds, unit: 's', baseline: beside(done.seconds, plain.seconds) },
          target: { text: `under ${mostSeconds}`, met: done.seconds < mostSeconds },
        },
        {
          what: `most memory meanwhile, ${kind}`,
          ...{ value: done.megabytes, unit: 'MB', baseline: beside(done.megabytes, plain.megabytes), target: null },
        },
      )
    }
    return measurements
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

type Measured = { rows: number; seconds: number; megabytes: number }

/** Each in a process of its own, so that neither has the memory of the other. */
async function measured(...words: string[]): Promise<Measured> {
  const script = join(projectFolder, 'tests/bench/importingProcess.ts')
  const { stdout } = await promisify(execFile)(process.execPath, [script, ...words])
  return JSON.parse(stdout) as Measured
}

function* table(): Generator<(string | number)[]> {
  for (let row = 0; row < rows; row++)
    yield [
      ...[`A-${row}`, `casein C${row % 50}`, 400 + ((row * 7919) % 3000) / 10, 0.75, 5 * (row % 21), '2019-03-14'],
      ...[`2020-0${1 + (row % 9)}-16`, ['loft', 'bilge', 'boil and dry'][row % 3]!, `plank ${row % 40}`],
      row % 50 === 0 ? 'slipped a little' : '',
    ]
}

/** The same as a file of sheets, with its texts in its cells. */
async function writeSheet(file: string): Promise<void> {
  const relationships = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
  const packaged = 'http://schemas.openxmlformats.org/package/2006/relationships'
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
  const related = (type: string, target: string) =>
    `<Relationships xmlns="${packaged}"><Relationship Id="r1" Type="${relationships}/${type}" Target="${target}"/></Relationships>`
  const zip = new yazl.ZipFile()
  zip.addBuffer(Buffer.from(related('officeDocument', 'xl/workbook.xml')), '_rels/.rels')
  zip.addBuffer(Buffer.from(related('worksheet', 'worksheets/sheet1.xml')), 'xl/_rels/workbook.xml.rels')
  zip.addBuffer(
    Buffer.from(
      `<workbook xmlns="${main}" xmlns:r="${relationships}"><sheets><sheet name="Blocks" sheetId="1" r:id="r1"/></sheets></workbook>`,
    ),
    'xl/workbook.xml',
  )
  zip.addReadStreamLazy('xl/worksheets/sheet1.xml', (done) => done(null, Readable.from(sheetXml(main))))
  zip.end()
  await pipeline(zip.outputStream, createWriteStream(file))
}

function* sheetXml(main: string): Generator<string> {
  yield `<worksheet xmlns="${main}"><sheetData>`
  let row = 0
  for (const cells of [headings, ...table()]) {
    row++
    yield `<row r="${row}">${cells.map(cellXml).join('')}</row>`
  }
  yield '</sheetData></worksheet>'
}

function cellXml(value: string | number): string {
  return typeof value === 'number' ? `<c><v>${value}</v></c>` : `<c t="inlineStr"><is><t>${value}</t></is></c>`
}
