// Held by tests/exchange/import/readRows.spec.ts.
import type { ImportField } from '#contract/specimens/importMapping.ts'

/** What the fields of a table are called in a sentence. */
export const fieldWords: Readonly<Record<ImportField, string>> = {
  number: 'number of the specimen',
  adhesive: 'adhesive',
  lot: 'lot',
  wood: 'wood',
  jointType: 'joint type',
  exposure: 'exposure',
  bondLineGap: 'bond line gap',
  overlapLength: 'overlap length',
  overlapWidth: 'overlap width',
  area: 'bonded area',
  load: 'load',
  strength: 'strength',
  woodFailurePercent: 'wood failure',
  failurePattern: 'failure pattern',
  gluedOn: 'day of glue-up',
  brokenOn: 'day of the break',
  ageMonths: 'age in months',
  board: 'board',
  place: 'place',
  note: 'note',
}

const longestShown = 40

/** A text of a sheet within a sentence, cut where it is long. */
export function quotedText(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim()
  return `“${line.length > longestShown ? `${line.slice(0, longestShown)}…` : line}”`
}

/** Why a cell gives no value, each as the end of a sentence that begins with where it stands. */
export const cellFault = {
  notANumber: (text: string) => `${quotedText(text)} is not a number as people write one`,
  twoNumbers: (text: string, one: number, other: number) =>
    `${quotedText(text)} may be ${one} or ${other}; the mapping can say which sign parts the decimals`,
  otherSign: (text: string, sign: string) => `${quotedText(text)} is not written with “${sign}” before the decimals`,
  strangeUnit: (text: string, units: readonly string[]) =>
    units.length === 0
      ? `${quotedText(text)} has a unit, and this field has none`
      : `${quotedText(text)} has a unit that is none of ${units.join(', ')}`,
  noUnit: (text: string) => `${quotedText(text)} has no unit, and the mapping names none`,
  isDate: (text: string) => `the cell holds a date (${text}), as sheet programs make of 3/4, and not a number`,
  isTime: 'the cell holds a time of day',
  isTruth: (text: string) => `the cell holds ${text}, which is no value here`,
  isError: (text: string) => `the formula failed with ${text.slice(0, longestShown)}`,
  unstored: 'the formula has no stored value; open the file in a sheet program and save it',
  notADay: (text: string, format: string) => `${quotedText(text)} is not a date written as ${format}`,
  noSuchDay: (text: string) => `${quotedText(text)} is a day that does not exist`,
  twoDays: (text: string) => `${quotedText(text)} may be more than one day; the mapping can say how dates are written`,
  dayIsNumber: (text: string) =>
    `${text} is a number without the format of a date; give the cell that format in the sheet program`,
  notPositive: (shown: number) => `${shown} is not above 0`,
  negative: (shown: number) => `${shown} is below 0`,
  notPercent: (shown: number) => `${shown} % is not from 0 to 100 %`,
  tooLong: (most: number) => `the text is longer than ${most} characters, or holds half of one`,
  noPattern: (text: string, patterns: readonly string[]) => `${quotedText(text)} is none of ${patterns.join(', ')}`,
  strangeFill: (fill: string) => `the mapping does not say what the colour ${fill} of the cell means`,
} as const

/** The sentence of a row that a cell spoils: "Row 7, column C (Load), load: … ." */
export function spoiltCell(row: number, column: string | null, field: ImportField, fault: string): string {
  return `Row ${row}${column === null ? '' : `, column ${column}`}, ${fieldWords[field]}: ${fault}.`
}

/** Why a row that can be read gives no result, each as the end of a sentence that begins with the row. */
export const rowFault = {
  sumsUp: (words: string) =>
    `${quotedText(words)} stands in it, and a row that sums up others is no block; call it otherwise if it is one`,
  noResult: 'neither a load nor a strength stands in it',
  tooManyFields: (fields: number, headings: number) =>
    `it has ${fields} fields and the headings ${headings}; a decimal comma would do that`,
  contradiction: (fromLoadMPa: number, strengthMPa: number) =>
    `load and area give ${fromLoadMPa.toPrecision(3)} MPa, and the strength says ${strengthMPa.toPrecision(3)} MPa`,
  ageBackwards: (glued: string, broken: string) => `it was broken on ${broken}, before it was glued on ${glued}`,
} as const

/** The sentence of a row that gives no result. */
export function spoiltRow(row: number, column: string | null, fault: string): string {
  return `Row ${row}${column === null ? '' : `, column ${column}`}: ${fault}.`
}

/** What is said of a value that is taken from a formula. */
export function storedValueTaken(field: ImportField): string {
  return `The value that the formula had stored was taken for the ${fieldWords[field]}.`
}

/** What is said of a dash or the like in a cell. */
export function nothingSaid(text: string, field: ImportField): string {
  return `${quotedText(text)} was taken to say nothing of the ${fieldWords[field]}.`
}

/** What becomes of colours that no value was given for. */
export const unsaidColour =
  'A colour without a value spoils its rows: say what it means. Where no colour has no value, such cells say nothing.'
