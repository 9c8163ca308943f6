// Held by tests/exchange/sheets/readXlsx.spec.ts.
import { Trouble } from '#contract/errors.ts'
import { attributeOf, readElements } from './xmlElements.ts'
import type { ZipParts } from './zipParts.ts'

/** The sheets of a file with the parts that they lie in, the parts that all of them share, and where days begin to be counted. */
export type Workbook = {
  sheets: { name: string; hidden: boolean; part: string }[]
  styles: string | null
  sharedStrings: string | null
  /** Days counted from 1 January 1904 instead of 1900. */
  from1904: boolean
}

/** Reads which sheets a file holds. Throws Trouble `not-readable` where it is no file of sheets, or holds none. */
export async function readWorkbook(file: string, parts: ZipParts): Promise<Workbook> {
  const top = await relationsOf(file, parts, '')
  const part = [...top.values()].find(({ type }) => type === 'officeDocument')?.target ?? 'xl/workbook.xml'
  if (!parts.has(part)) throw noWorkbook(file)
  const relations = await relationsOf(file, parts, part)
  const sheets: Workbook['sheets'] = []
  let from1904 = false
  await readElements(file, parts.text(part), {
    open(name, attributes) {
      if (name === 'workbookPr') from1904 = ['1', 'true', 'on'].includes(attributes.date1904 ?? '')
      if (name !== 'sheet') return
      const relation = relations.get(attributeOf(attributes, 'id') ?? '')
      // A sheet that is nothing but a chart holds no rows
      if (relation === undefined || relation.type !== 'worksheet') return
      const hidden = attributes.state === 'hidden' || attributes.state === 'veryHidden'
      sheets.push({ name: attributes.name ?? '', hidden, part: relation.target })
    },
  })
  if (sheets.length === 0) throw noWorkbook(file)
  const shared = (type: string) => [...relations.values()].find((one) => one.type === type)?.target ?? null
  return { sheets, from1904, styles: shared('styles'), sharedStrings: shared('sharedStrings') }
}

type Relations = Map<string, { type: string; target: string }>

async function relationsOf(file: string, parts: ZipParts, part: string): Promise<Relations> {
  const slash = part.lastIndexOf('/') + 1
  const [folder, name] = [part.slice(0, slash), part.slice(slash)]
  const relations: Relations = new Map()
  const relationsPart = `${folder}_rels/${name}.rels`
  if (!parts.has(relationsPart)) return relations
  await readElements(file, parts.text(relationsPart), {
    open(element, attributes) {
      if (element !== 'Relationship') return
      const { Id = '', Type = '', Target = '' } = attributes
      relations.set(Id, { type: Type.slice(Type.lastIndexOf('/') + 1), target: partAt(folder, Target) })
    },
  })
  return relations
}

/** The part at the target of a relation; what is no address stands for itself, and is no part. */
function partAt(folder: string, target: string): string {
  return URL.parse(target, `part:/${folder}`)?.pathname.slice(1) ?? target
}

const noWorkbook = (file: string) =>
  new Trouble(
    'not-readable',
    `${file}: this is a packed file, but not one of sheets (.xlsx).`,
    'Open it in a sheet program, and save the sheet as .xlsx or CSV.',
  )
