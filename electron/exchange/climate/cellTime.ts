import { fixedOffsetS } from '#domain/climate/zoneClock.ts'
import { dayOf } from '#domain/programme/calendar/calendarDay.ts'
import { loggerFault } from '#words/findings/climate/loggerWords.ts'
import { cellDate } from '../import/cellDate.ts'
import type { Read } from '../import/cellNumber.ts'
import { type Cell, textCell } from '../sheets/sheet.ts'

/** What the clock of a logger showed, in seconds as if it stood at UTC, and how far ahead of UTC the cell itself says that it was; NaN: it does not say. */
export type ShownTime = { shownS: number; aheadS: number }

const secondsPerDay = 86_400
/** Nobody writes a longer time with its day. */
const longestTime = 100
const withTime = /^(.*\S)(?:\s+|T)(\d{1,2}:\d{2}.*)$/i
const timeOfDay =
  /^(\d{1,2}):(\d{2})(?::(\d{2}(?:[.,]\d{1,9})?))?\s*(?:([ap])\.?m\.?)?\s*(z|utc|gmt|[+\-\u2212]\d{2}:?\d{2})?$/i

/** Reads times whose days are written so; null: only what can be but one day is taken. `clock`: the time of day where it has a column of its own. */
export function timeReader(dateFormat: string | null): (cell: Cell, clock: Cell | null) => Read<ShownTime> {
  // Thousands of rows follow each other with the same day
  let known = { text: '', dayS: { fault: '' } as Read<number> }
  const daySOf = (cell: Cell): Read<number> => {
    const day = cellDate(cell, dateFormat)
    return 'fault' in day ? day : { value: dayOf(day.value) * secondsPerDay }
  }
  const dayIn = (cell: Cell): Read<number> => {
    if (cell.kind !== 'text') return daySOf(cell)
    if (cell.text !== known.text) known = { text: cell.text, dayS: daySOf(cell) }
    return known.dayS
  }
  return (cell, clock) => {
    const isShort = cell.text.length <= longestTime
    const parts = cell.kind === 'text' && isShort && clock === null ? withTime.exec(cell.text.trim()) : null
    const day = dayIn(parts === null ? cell : textCell(parts[1]!))
    if ('fault' in day) return day
    const time = timeOf(cell, clock, parts === null ? null : parts[2]!)
    if ('fault' in time) return time
    return { value: { shownS: day.value + time.value.shownS, aheadS: time.value.aheadS } }
  }
}

function timeOf(cell: Cell, clock: Cell | null, written: string | null): Read<ShownTime> {
  if (written !== null) return readTimeOfDay(written)
  const from = clock ?? cell
  if (from.kind === 'date') return { value: { shownS: from.secondOfDay ?? 0, aheadS: Number.NaN } }
  if (from.kind === 'time') {
    const share = Number(from.text)
    if (!(share >= 0 && share < 1)) return { fault: loggerFault.noSuchTime(from.text) }
    return { value: { shownS: Math.round(share * secondsPerDay), aheadS: Number.NaN } }
  }
  return clock === null ? { fault: loggerFault.noTimeOfDay(cell.text) } : readTimeOfDay(clock.text.trim())
}

function readTimeOfDay(text: string): Read<ShownTime> {
  const parts = timeOfDay.exec(text)
  if (parts === null) return { fault: loggerFault.notATime(text) }
  const [, hours, minutes, seconds = '0', half, offset] = parts
  const [hour, minute, second] = [Number(hours), Number(minutes), Number(seconds.replace(',', '.'))]
  const known = half === undefined ? hour <= 23 : hour >= 1 && hour <= 12
  const aheadS = offset === undefined ? Number.NaN : fixedOffsetS(offset)
  if (!known || minute > 59 || second >= 60 || aheadS === null) return { fault: loggerFault.noSuchTime(text) }
  const inDay = half === undefined ? hour : (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0)
  return { value: { shownS: inDay * 3600 + minute * 60 + Math.round(second), aheadS } }
}
