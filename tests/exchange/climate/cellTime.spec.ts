import { describe, expect, it } from 'vitest'
import { timeReader } from '#exchange/climate/cellTime.ts'
import { type Cell, textCell } from '#exchange/sheets/sheet.ts'

const shown = (text: string, form: string | null = null, clock: Cell | null = null) => {
  const read = timeReader(form)(textCell(text), clock)
  return 'fault' in read ? read.fault : new Date(read.value.shownS * 1000).toISOString().slice(0, 19)
}
const cell = (kind: Cell['kind'], text: string, change: Partial<Cell> = {}): Cell => ({
  ...{ kind, text, number: null, unit: '', formula: false, fill: null, ...change },
})

describe('the time of a cell', () => {
  it('is read as loggers write it', () => {
    expect(shown('2026-03-01 14:05')).toBe('2026-03-01T14:05:00')
    expect(shown('2026-03-01T14:05:30.4')).toBe('2026-03-01T14:05:30')
    expect(shown('01.03.2026 14:05:30', 'D.M.YYYY')).toBe('2026-03-01T14:05:30')
    expect(shown('3/1/26 2:05:30 PM', 'M/D/YY')).toBe('2026-03-01T14:05:30')
    expect(shown('3/1/26 12:00 a.m.', 'M/D/YY')).toBe('2026-03-01T00:00:00')
  })

  it('may have a column for the day and one for the time of day', () => {
    expect(shown('1.3.2026', 'D.M.YYYY', textCell('14:05'))).toBe('2026-03-01T14:05:00')
    expect(shown('1.3.2026', 'D.M.YYYY', cell('time', '0.5'))).toBe('2026-03-01T12:00:00')
    expect(shown('1.3.2026', 'D.M.YYYY', textCell('noon'))).toBe('“noon” is not a time of day as 14:05 or 14:05:30')
  })

  it('is that of a sheet, to the second', () => {
    const read = timeReader(null)(cell('date', '2026-03-01', { secondOfDay: 50_730 }), null)
    expect(read).toEqual({ value: { shownS: Date.parse('2026-03-01T14:05:30Z') / 1000, aheadS: Number.NaN } })
  })

  it('knows the offset that stands behind it', () => {
    const aheadS = (text: string) => {
      const read = timeReader(null)(textCell(text), null)
      return 'fault' in read ? read.fault : read.value.aheadS
    }
    expect(['Z', '+01:00', '-0330', ''].map((offset) => aheadS(`2026-03-01T14:05:00${offset}`))).toEqual([
      0,
      3600,
      -12_600,
      Number.NaN,
    ])
  })

  it.each([
    ['2026-02-30 10:00', '“2026-02-30” is a day that does not exist'],
    ['2026-03-01 24:10', '“24:10” is a time of day that does not exist'],
    ['2026-03-01 13:05 pm', '“13:05 pm” is a time of day that does not exist'],
    ['2026-03-01', '“2026-03-01” has no time of day'],
    ['2/3/2026 10:00', '“2/3/2026” may be more than one day; the mapping can say how dates are written'],
    ['yesterday 10:00', '“yesterday” is not a date written as YYYY-MM-DD'],
  ])('is none for %s', (text, fault) => {
    expect(shown(text)).toBe(fault)
  })

  it('is read once more where the same day comes again', () => {
    const read = timeReader(null)
    const texts = ['2026-02-30 10:00', '2026-02-30 11:00', '2026-02-28 11:00']
    expect(texts.map((text) => 'fault' in read(textCell(text), null))).toEqual([true, true, false])
  })
})
