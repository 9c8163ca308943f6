import { quotedText } from '../../specimens/import/rejectedWords.ts'

/** What the columns of a logger are called in a sentence. */
export const loggerFields = {
  time: 'time',
  timeOfDay: 'time of day',
  temperature: 'temperature',
  humidity: 'relative humidity',
} as const
export type LoggerField = keyof typeof loggerFields

/** Why a cell of a logger gives no value, each as the end of a sentence that begins with where it stands. */
export const loggerFault = {
  empty: 'nothing stands there',
  noTimeOfDay: (text: string) => `${quotedText(text)} has no time of day`,
  noSuchTime: (text: string) => `${quotedText(text)} is a time of day that does not exist`,
  notATime: (text: string) => `${quotedText(text)} is not a time of day as 14:05 or 14:05:30`,
  strangeUnit: (text: string, units: string) => `${quotedText(text)} has an unknown unit; it may be ${units}`,
  noHumidity: (percent: number) => `${percent} % is not from 0 to 100 % relative humidity`,
  noAirTemperature: (shown: string) => `${shown} is no temperature of a store`,
} as const

/** Why the time of a row cannot follow those before it; the numbers are those of rows. */
export const timeFaultWords = {
  'none-shown': () => 'the clock of this zone was put forward over this time, so it never showed it',
  'shown-before': (other: number | null) => `its time is that of row ${other} already`,
  back: (other: number | null) => `its time goes back behind that of row ${other}`,
  ahead: (other: number | null) => `its time lies after that of row ${other}, which follows`,
  'to-come': () => 'its time has not come yet',
} as const

/** What a person is told of a reading that is kept for the same time. */
export function otherReadingWords(row: number): string {
  return `Row ${row}: another reading is kept for this time; where this one is right, set the other import aside first.`
}

/** What a row becomes that is kept already. */
export const sameReadingWords = 'The same reading is kept already.'
