import { calendarDayWords } from '../units/calendarDays.ts'

/** On which day a calibration is to be made again. */
export function dueWords(dueOn: string | null): string {
  return dueOn === null ? 'no date set' : calendarDayWords(dueOn)
}
