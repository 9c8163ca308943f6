import * as z from 'zod'
import { finite, words } from '../values.ts'

/** What a table of past results can say of a block. */
export const importField = z.enum([
  'number',
  'adhesive',
  'lot',
  'wood',
  'jointType',
  'exposure',
  'bondLineGap',
  'overlapLength',
  'overlapWidth',
  'area',
  'load',
  'strength',
  'woodFailurePercent',
  'failurePattern',
  'gluedOn',
  'brokenOn',
  'ageMonths',
  'board',
  'place',
  'note',
])
export type ImportField = z.infer<typeof importField>

const forceUnits = ['N', 'kN', 'lbf', 'kgf'] as const
const lengthUnits = ['mm', 'in'] as const

/** The units in which the numbers of a field may stand, that of the archive first. Other fields have none. */
export const unitsOfField = {
  load: forceUnits,
  strength: ['MPa', 'psi'],
  area: ['mm2', 'in2'],
  overlapLength: lengthUnits,
  overlapWidth: lengthUnits,
  bondLineGap: lengthUnits,
  ageMonths: ['months', 'years'],
} as const satisfies Partial<Record<ImportField, readonly string[]>>
export type MeasuredField = keyof typeof unitsOfField

/** The fields that hold a day. */
export const dayFields = ['gluedOn', 'brokenOn'] as const satisfies readonly ImportField[]

export const importUnit = z.enum(['N', 'kN', 'lbf', 'kgf', 'MPa', 'psi', 'mm', 'in', 'mm2', 'in2', 'months', 'years'])

/** A heading, letters over a column, or its number from 1. */
export const columnName = z.union([words.min(1), z.int().positive().max(16_384)])
export type ColumnName = z.infer<typeof columnName>

/** D, DD, M, MM, MMM (Jan), YYYY or YY (69 to 99: the last century), with what stands between them. */
export const dateFormat = z
  .string()
  .max(20)
  .refine(
    (text) => /D/.test(text) && /M/.test(text) && /YY/.test(text) && /^(?:DD?|M{1,3}|YYYY|YY|[ ./,-])+$/.test(text),
    'is no form of a date; write it with D, M and YYYY, as in D.M.YYYY',
  )

/** A colour as a mapping names it: #ffff00, FFFFFF00 and FFFF00 are the same; a theme colour goes by its name. */
export function fillCode(written: string): string {
  const text = written.trim().replace(/^#/, '')
  return /^[0-9a-f]{6}(?:[0-9a-f]{2})?$/i.test(text) ? text.slice(-6).toUpperCase() : text
}

/**
 * Where a field comes from: a column, a value for all rows, the fill of the cell of another field; nothing of that: what the
 * layout gives it (the replicates, or the blocks).
 */
export const fieldSource = z
  .strictObject({
    column: columnName.optional(),
    value: z.union([words, finite]).optional(),
    unit: importUnit.optional(),
    dateFormat: dateFormat.optional(),
    fillOf: importField.optional(),
    fills: z
      .record(
        z
          .string()
          .max(40)
          .refine(
            (text) => /^(?:[0-9A-F]{6}|theme .+|pattern)$/.test(fillCode(text)),
            'is no colour; write six hexadecimal digits',
          ),
        z.union([words, finite]),
      )
      .optional(),
    noFill: z.union([words, finite]).nullable().optional(),
  })
  .refine(
    ({ column, value, fillOf }) => [column, value, fillOf].filter((one) => one !== undefined).length <= 1,
    'comes from one place: a column, a value or a fill',
  )
  .refine(({ fillOf, fills }) => (fillOf === undefined) === (fills === undefined), 'needs fillOf and fills together')
export type FieldSource = z.infer<typeof fieldSource>

export const delimiter = z.enum([',', ';', '\t'])
export type Delimiter = z.infer<typeof delimiter>
export const decimalSign = z.enum(['.', ','])
export type DecimalSign = z.infer<typeof decimalSign>
export const textEncoding = z.enum([
  'utf-8',
  'utf-16le',
  'utf-16be',
  'windows-1252',
  'windows-1250',
  'iso-8859-15',
  'macintosh',
])
export type TextEncoding = z.infer<typeof textEncoding>

/** How the columns of a table of past results become blocks. Kept with each import, and under a name for the next one. */
export const importMapping = z
  .strictObject({
    sheet: z.string().max(200).optional(),
    headerRow: z.int().min(0).max(10_000).default(1),
    layout: z.enum(['row-per-specimen', 'row-per-group', 'blocks']),
    fields: z.partialRecord(importField, fieldSource).default({}),
    replicates: z.strictObject({ columns: z.array(columnName).min(1).max(1000) }).optional(),
    blocks: z
      .array(z.partialRecord(importField, z.union([columnName, fieldSource])))
      .min(1)
      .max(1000)
      .optional(),
    delimiter: delimiter.optional(),
    decimal: decimalSign.optional(),
    encoding: textEncoding.optional(),
  })
  .refine(({ layout, replicates }) => (layout === 'row-per-group') === (replicates !== undefined), {
    message: 'belong to the layout "row-per-group", which needs them',
    path: ['replicates'],
  })
  .refine(({ layout, blocks }) => (layout === 'blocks') === (blocks !== undefined), {
    message: 'belong to the layout "blocks", which needs them',
    path: ['blocks'],
  })
export type ImportMapping = z.infer<typeof importMapping>

/** A mapping that was kept under a name. */
export const namedMapping = z.strictObject({ name: words.min(1), mapping: importMapping })
export type NamedMapping = z.infer<typeof namedMapping>
