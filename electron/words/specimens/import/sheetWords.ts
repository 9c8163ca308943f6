import type { FieldSource, ImportField, ImportMapping } from '#contract/specimens/importMapping.ts'
import type { SheetView } from '#contract/specimens/sheetView.ts'
import { countOf, ofWords } from '../../units/counts.ts'
import { fieldWords } from './rejectedWords.ts'

/** The name of a field as a choice: with a capital. */
export function fieldTitle(field: ImportField): string {
  const words = fieldWords[field]
  return words[0]!.toUpperCase() + words.slice(1)
}

/** What is to be known of a sheet before it is read, each as one sentence. */
export function sheetRemarks(view: SheetView): string[] {
  const { sheets, merged, formulas, errors, emptyRows, filledRows, hiddenRows, rows, columns } = view
  const hidden = sheets.filter((one) => one.hidden).map(({ name }) => `“${name}”`)
  const shown = rows.filter(({ row }) => row > view.headerRow).length
  return [
    shown < filledRows ? `The first ${ofWords(shown, filledRows)} rows are shown; all are read.` : '',
    hidden.length === 0
      ? ''
      : `${hidden.join(', ')} ${hidden.length === 1 ? 'is' : 'are'} hidden and read only if you choose so.`,
    hiddenRows === 0
      ? ''
      : `${countOf(hiddenRows, 'row')} ${hiddenRows === 1 ? 'is' : 'are'} hidden in the sheet and read like all others.`,
    merged === 0
      ? ''
      : `${countOf(merged, 'cell')} ${merged === 1 ? 'has its' : 'have their'} value from a merged cell; each is marked “merged”.`,
    formulas === 0
      ? ''
      : `${countOf(formulas, 'cell')} ${formulas === 1 ? 'holds a formula' : 'hold formulas'}; the stored value counts.`,
    errors === 0
      ? ''
      : `${countOf(errors, 'formula')} failed or ${errors === 1 ? 'has' : 'have'} no stored value; such a cell spoils its row where it is read.`,
    emptyRows === 0 ? '' : `${countOf(emptyRows, 'row')} ${emptyRows === 1 ? 'is' : 'are'} empty and passed over.`,
    columns.length === 0 ? 'The sheet holds nothing.' : '',
  ].filter((one) => one !== '')
}

/** What a mapping leaves open that a person may have overlooked, each as one sentence. */
export function mappingRemarks({ fields, blocks = [], replicates }: ImportMapping): string[] {
  const isGiven = (field: ImportField) =>
    isSource(fields[field]) ||
    blocks.some((block) => (typeof block[field] !== 'object' ? block[field] !== undefined : isSource(block[field])))
  const hasArea = isGiven('area') || (isGiven('overlapLength') && isGiven('overlapWidth'))
  const hasStrength = isGiven('strength') || (replicates !== undefined && fields.strength !== undefined)
  return [
    isGiven('adhesive') ? '' : 'Nothing gives the adhesive: the blocks would be glued with “(not named)”.',
    hasArea || hasStrength
      ? ''
      : 'Nothing gives the bonded area, or length and width: the blocks would have a load and no strength.',
  ].filter((one) => one !== '')
}

const isSource = (source: FieldSource | undefined) =>
  source !== undefined && (source.column ?? source.value ?? source.fillOf) !== undefined

/** What keeps a mapping from being tried, in one sentence; null: nothing. */
export function mappingGap({ layout, fields, replicates, blocks }: ImportMapping): string | null {
  if (layout === 'row-per-group' && replicates!.columns.length === 0) return 'Point at the columns of the replicates.'
  if (layout === 'blocks' && blocks!.length === 0) return 'Point at the columns of the first block.'
  if (layout !== 'row-per-specimen') return null
  return fields.load === undefined && fields.strength === undefined
    ? 'Point at the column of the load, or of the strength.'
    : null
}

/** Which files can be brought in, of a table that holds this. */
export const tableKinds = (what: string) =>
  `${what}, .xlsx or .csv. It can be dropped here as well. Nothing is stored until you say so.`

/** What an import is, before a file is chosen. */
export const importMeaning =
  'A table comes in as a whole or not at all. Each of its results is a peak alone, marked with file and row: it has no curve and no verified range.'
