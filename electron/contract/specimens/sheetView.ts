import * as z from 'zod'
import { columnName, delimiter, importMapping, textEncoding } from './importMapping.ts'

/** The background colour of a cell, as a mapping names it; null: none. */
const fill = z.string().nullable()

/** A cell of a sheet as it is shown. */
export const sheetCell = z.strictObject({
  text: z.string(),
  kind: z.enum(['text', 'number', 'date', 'time', 'truth', 'error', 'unstored', 'empty']),
  fill,
  formula: z.boolean(),
  /** Its value stands in a merged cell that begins further up. */
  merged: z.boolean(),
})
export type SheetCell = z.infer<typeof sheetCell>

/** A column of a sheet, with what stands in it below the headings. */
export const sheetColumn = z.strictObject({
  letters: z.string(),
  heading: z.string(),
  /** How a mapping names it beyond doubt. */
  name: columnName,
  /** How many cells hold something. */
  filled: z.int().nonnegative(),
  /** The colours of cells that hold something, the commonest first; null: no colour. */
  fills: z.array(z.strictObject({ fill, count: z.int().positive() })),
})
export type SheetColumn = z.infer<typeof sheetColumn>

/** A sheet as the page of the import shows it: its first rows, what stands in its columns, and a mapping for it. */
export const sheetView = z.strictObject({
  fileSha256: z.string(),
  /** Empty: the file is one table. */
  sheets: z.array(z.strictObject({ name: z.string(), hidden: z.boolean() })),
  sheet: z.string().nullable(),
  text: z.strictObject({ delimiter, encoding: textEncoding }).nullable(),
  headerRow: z.int().nonnegative(),
  columns: z.array(sheetColumn),
  /** The first rows that hold something; cells stand at their columns, null: nothing stands there. */
  rows: z.array(z.strictObject({ row: z.int().positive(), cells: z.array(sheetCell.nullable()) })),
  /** Rows below the headings that hold something, and those that hold nothing. */
  filledRows: z.int().nonnegative(),
  emptyRows: z.int().nonnegative(),
  /** Of the rows that hold something, those that a sheet program does not show. */
  hiddenRows: z.int().nonnegative(),
  /** Cells below the headings, by what is to be said of them. */
  merged: z.int().nonnegative(),
  formulas: z.int().nonnegative(),
  errors: z.int().nonnegative(),
  proposed: importMapping,
})
export type SheetView = z.infer<typeof sheetView>
