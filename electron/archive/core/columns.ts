import { canonicalJson } from '#domain/text/canonicalJson.ts'

/** How one value of a record lies in its table. */
export type Column = {
  readonly coding: 'plain' | 'json' | 'truth' | 'bytes'
  /** Its name, where it is not the key in snake case. */
  readonly name?: string
  readonly absentWhenNull?: true
}

/** The columns of a record: one for each of its keys; a member that is a record itself may be spread over columns of its own. */
export type ColumnsOf<Stored> = { readonly [Key in keyof Stored]-?: ColumnOf<NonNullable<Stored[Key]>> }
type ColumnOf<Value> =
  | Column
  | (Value extends readonly unknown[] ? never : Value extends object ? ColumnsOf<Value> : never)

/** A number or a text, as it is. */
export const plain: Column = { coding: 'plain' }
/** Canonical JSON. */
export const json: Column = { coding: 'json' }
/** 0 or 1. */
export const truth: Column = { coding: 'truth' }
/** Bytes; in the record their hexadecimal digits. */
export const bytes: Column = { coding: 'bytes' }

/** The same under a name that does not follow from the key. */
export function named(name: string, column: Column = plain): Column {
  return { ...column, name }
}

/**
 * The same, with its key left out where the column is NULL: what came with a later format leaves the entries that the ledger
 * holds of older records as they were. A member all of whose columns are absent is absent.
 */
export function absent(column: Column): Column {
  return { ...column, absentWhenNull: true }
}

export type Row = Readonly<Record<string, unknown>>

/** A column with the place of its value in the record. */
export type Place = Column & { readonly name: string; readonly path: readonly string[] }

/** The columns one after the other, each with its place in the record. */
export function placesOf(columns: object, path: readonly string[] = []): Place[] {
  return Object.entries(columns).flatMap(([key, column]: [string, Column | object]) =>
    isColumn(column) ? [{ name: snakeCase(key), ...column, path: [...path, key] }] : placesOf(column, [...path, key]),
  )
}

function isColumn(column: Column | object): column is Column {
  return 'coding' in column && typeof column.coding === 'string'
}

/** The values of a record by the names of their columns; what is missing is NULL. */
export function rowOf(places: readonly Place[], record: object): Record<string, unknown> {
  return Object.fromEntries(places.map((place) => [place.name, coded(place, valueAt(record, place.path))]))
}

function valueAt(record: object, path: readonly string[]): unknown {
  let value: unknown = record
  for (const key of path) value = (value as Record<string, unknown> | null | undefined)?.[key]
  return value ?? null
}

function coded({ coding }: Place, value: unknown): unknown {
  if (value === null || coding === 'plain') return value
  if (coding === 'bytes') return Buffer.from(String(value), 'hex')
  return coding === 'json' ? canonicalJson(value) : Number(value)
}

/** The record that a row holds, just as it is stored: with no default that a later version of the program would add. */
export function contentOf(places: readonly Place[], row: Row): Record<string, unknown> {
  const content: Record<string, unknown> = {}
  for (const place of places) {
    const value = row[place.name] ?? null
    if (value === null && place.absentWhenNull === true) continue
    let member = content
    for (const key of place.path.slice(0, -1)) {
      member[key] ??= {}
      member = member[key] as Record<string, unknown>
    }
    member[place.path.at(-1)!] = decoded(place, value)
  }
  return content
}

function decoded({ coding }: Place, value: unknown): unknown {
  if (value === null || coding === 'plain') return value
  if (coding === 'bytes') return value instanceof Uint8Array ? Buffer.from(value).toString('hex') : value
  return coding === 'json' ? JSON.parse(String(value)) : value === 1
}

/** "sampleRateHz" is kept in "sample_rate_hz". */
export function snakeCase(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
}
