import type { ColumnName, FieldSource, ImportField, ImportMapping } from '#contract/specimens/importMapping.ts'
import type { SheetColumn } from '#contract/specimens/sheetView.ts'

/** What a column of the sheet gives; `block`: which of the blocks side by side, from 1; null: every block of the row. */
export type Role = { field: ImportField | 'replicate'; block: number | null }

type Fields = Partial<Record<ImportField, FieldSource>>
type Block = NonNullable<ImportMapping['blocks']>[number]

/** The place of a column that a mapping names; null: this sheet has none of that name. */
export function columnOf(columns: readonly SheetColumn[], name: ColumnName): number | null {
  const wanted = String(name).replaceAll(/\s+/g, ' ').trim()
  const lower = wanted.toLowerCase()
  const tests: ((column: SheetColumn, place: number) => boolean)[] = [
    (column) => column.name === name,
    ({ heading }) => heading === wanted,
    ({ heading }) => heading.toLowerCase() === lower,
    ({ letters }) => letters === wanted.toUpperCase(),
    (_, place) => typeof name === 'number' && place === name - 1,
  ]
  for (const fits of tests) {
    const place = columns.findIndex(fits)
    if (place >= 0) return place
  }
  return null
}

/** What every column gives, null where nothing is read from it. */
export function rolesOf(mapping: ImportMapping, columns: readonly SheetColumn[]): (Role | null)[] {
  const roles: (Role | null)[] = columns.map(() => null)
  const say = (name: ColumnName | undefined, role: Role) => {
    const place = name === undefined ? null : columnOf(columns, name)
    if (place !== null) roles[place] = role
  }
  for (const [field, source] of entriesOf(mapping.fields)) say(source.column, { field, block: null })
  for (const name of mapping.replicates?.columns ?? []) say(name, { field: 'replicate', block: null })
  for (const [index, block] of (mapping.blocks ?? []).entries())
    for (const [field, given] of blockEntries(block)) say(columnIn(given), { field, block: index + 1 })
  return roles
}

/** The mapping with another meaning of a column; null: nothing is read from it any more. */
export function withRole(
  mapping: ImportMapping,
  columns: readonly SheetColumn[],
  place: number,
  role: Role | null,
): ImportMapping {
  const freed = withoutColumn(mapping, columns, place)
  const { name } = columns[place]!
  if (role === null) return withoutEmptyBlocks(freed)
  if (role.field === 'replicate') {
    const all = [...(freed.replicates?.columns ?? []), name]
    const inOrder = all.toSorted((a, b) => (columnOf(columns, a) ?? 0) - (columnOf(columns, b) ?? 0))
    return { ...freed, replicates: { columns: inOrder } }
  }
  if (role.block === null)
    return withSource(withoutEmptyBlocks(freed), role.field, { ...formOf(freed.fields[role.field]), column: name })
  const blocks: Block[] = [...(freed.blocks ?? [])]
  const at = Math.min(role.block - 1, blocks.length)
  blocks[at] = { ...blocks[at], [role.field]: name }
  const open = formOf(freed.fields[role.field])
  return withoutEmptyBlocks(withSource({ ...freed, blocks }, role.field, Object.keys(open).length === 0 ? null : open))
}

/** The mapping as it is asked with: a value that is still to be typed says nothing. */
export function readyMapping(mapping: ImportMapping): ImportMapping {
  const said = entriesOf(mapping.fields).filter(([, { value }]) => typeof value !== 'string' || value.trim() !== '')
  return { ...mapping, fields: Object.fromEntries(said) }
}

/** The mapping with another source of a field; null: the field is not said. */
export function withSource(mapping: ImportMapping, field: ImportField, source: FieldSource | null): ImportMapping {
  const { [field]: _before, ...others } = mapping.fields
  return { ...mapping, fields: source === null ? others : { ...others, [field]: source } }
}

/** The mapping with a value that one block says of itself; '': it says none. */
export function withBlockValue(mapping: ImportMapping, at: number, field: ImportField, value: string): ImportMapping {
  const blocks = (mapping.blocks ?? []).map((block, index): Block => {
    if (index !== at) return block
    const { [field]: _before, ...others } = block
    return value === '' ? others : { ...others, [field]: { value } }
  })
  return { ...mapping, blocks }
}

/** The value that one block says of itself; '': it says none. */
export function valueOfBlock(block: Block, field: ImportField): string {
  const given = block[field]
  return typeof given === 'object' && given.value !== undefined ? String(given.value) : ''
}

/** The measured field that the layout gives: of the replicates, or of the blocks. */
export function measuredOf({ fields, blocks }: ImportMapping): 'load' | 'strength' {
  if (blocks !== undefined) return blocks.some((block) => block.load !== undefined) ? 'load' : 'strength'
  return fields.strength !== undefined && fields.load === undefined ? 'strength' : 'load'
}

/** The mapping in another layout; what was pointed at as load or strength goes over. */
export function withLayout(mapping: ImportMapping, layout: ImportMapping['layout']): ImportMapping {
  if (layout === mapping.layout) return mapping
  const measured = measuredOf(mapping)
  const names = columnsOfField(mapping, measured)
  const { replicates: _replicates, blocks: _blocks, ...kept } = mapping
  const form = formOf(mapping.fields[measured])
  if (layout === 'row-per-specimen') {
    const open = withSource(
      { ...kept, layout },
      measured,
      names[0] === undefined ? null : { ...form, column: names[0] },
    )
    return { ...open, fields: Object.fromEntries(entriesOf(open.fields).filter(([, source]) => !isOpen(source))) }
  }
  const opened = withSource({ ...kept, layout }, measured, form)
  return layout === 'row-per-group'
    ? { ...opened, replicates: { columns: names } }
    : { ...opened, blocks: names.map((name): Block => ({ [measured]: name })) }
}

/** The replicates as loads, or as strengths. */
export function withMeasured(mapping: ImportMapping, measured: 'load' | 'strength'): ImportMapping {
  const before = measuredOf(mapping)
  return before === measured ? mapping : withSource(withSource(mapping, before, null), measured, {})
}

/** The columns that a field is read from, over all blocks. */
export function columnsOfField(mapping: ImportMapping, field: ImportField): ColumnName[] {
  const own = mapping.fields[field]?.column
  const ofBlocks = (mapping.blocks ?? []).flatMap((block) => columnIn(block[field]) ?? [])
  const across = mapping.replicates !== undefined && field === measuredOf(mapping) ? mapping.replicates.columns : []
  return [...(own === undefined ? [] : [own]), ...ofBlocks, ...across]
}

/** How often each colour stands in the cells of a field, the commonest first; null: no colour. */
export function coloursOf(
  mapping: ImportMapping,
  columns: readonly SheetColumn[],
  field: ImportField,
): { fill: string | null; count: number }[] {
  const counts = new Map<string | null, number>()
  for (const name of columnsOfField(mapping, field)) {
    const place = columnOf(columns, name)
    for (const { fill, count } of place === null ? [] : columns[place]!.fills)
      counts.set(fill, (counts.get(fill) ?? 0) + count)
  }
  return [...counts].map(([fill, count]) => ({ fill, count })).toSorted((a, b) => b.count - a.count)
}

/** Whether a field gives nothing by itself but how the columns of its layout are read. */
export const isOpen = ({ column, value, fillOf }: FieldSource) =>
  column === undefined && value === undefined && fillOf === undefined

/** How a field is read, without where it stands. */
function formOf(source: FieldSource | undefined): FieldSource {
  const { unit, dateFormat } = source ?? {}
  return { ...(unit === undefined ? {} : { unit }), ...(dateFormat === undefined ? {} : { dateFormat }) }
}

function withoutColumn(mapping: ImportMapping, columns: readonly SheetColumn[], place: number): ImportMapping {
  const isIt = (name: ColumnName | undefined) => name !== undefined && columnOf(columns, name) === place
  const { replicates, blocks, fields, ...rest } = mapping
  const kept: Fields = Object.fromEntries(entriesOf(fields).filter(([, { column }]) => !isIt(column)))
  const others = (block: Block) => Object.fromEntries(blockEntries(block).filter(([, given]) => !isIt(columnIn(given))))
  return {
    ...rest,
    fields: kept,
    ...(replicates === undefined ? {} : { replicates: { columns: replicates.columns.filter((name) => !isIt(name)) } }),
    ...(blocks === undefined ? {} : { blocks: blocks.map(others) }),
  }
}

/** A block from whose columns nothing is read any more is none. */
function withoutEmptyBlocks({ blocks, ...mapping }: ImportMapping): ImportMapping {
  const isRead = (block: Block) => blockEntries(block).some(([, given]) => columnIn(given) !== undefined)
  return blocks === undefined ? mapping : { ...mapping, blocks: blocks.filter(isRead) }
}

/** The column that a field of a block is read from; none where it has a value. */
export function columnIn(given: ColumnName | FieldSource | undefined): ColumnName | undefined {
  return typeof given === 'object' ? given.column : given
}

function entriesOf(fields: ImportMapping['fields']): [ImportField, FieldSource][] {
  return (Object.entries(fields) as [ImportField, FieldSource | undefined][]).flatMap(([field, source]) =>
    source === undefined ? [] : [[field, source] as [ImportField, FieldSource]],
  )
}

function blockEntries(block: Block): [ImportField, ColumnName | FieldSource][] {
  return (Object.entries(block) as [ImportField, ColumnName | FieldSource | undefined][]).flatMap(([field, given]) =>
    given === undefined ? [] : [[field, given] as [ImportField, ColumnName | FieldSource]],
  )
}
