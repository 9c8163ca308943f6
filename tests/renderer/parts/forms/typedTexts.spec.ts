import { describe, expect, it } from 'vitest'
import { changedTexts, readableTexts, shownTexts, type TypedTexts } from '#renderer/parts/forms/typedTexts.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'

const [SI, US] = [quantitiesIn('SI'), quantitiesIn('US')]
type Texts = { length: string; name: string }
const fields = { length: (quantities: typeof SI) => quantities.length }
const kept = (length: string): TypedTexts<Texts> => ({ texts: { length, name: '30' }, typedIn: {} })
const typed = (before: TypedTexts<Texts>, length: string, now: typeof SI) =>
  changedTexts(before, shownTexts(before, fields, now), { length, name: '30' }, now)
const readIn = (texts: TypedTexts<Texts>, now: typeof SI) =>
  readQuantity(readableTexts(texts, fields, now).length, now.length, 'it')

describe('the texts of a form when the units change', () => {
  it('show 30 mm as 1.1811 in, and leave what has no unit alone', () => {
    expect(shownTexts(typed(kept(''), '30', SI), fields, US)).toEqual({ length: '1.1811', name: '30' })
  })

  it('are read as what was typed, not as what is shown', () => {
    const thirty = typed(kept(''), '30', SI)
    expect(readIn(thirty, US)).toEqual({ stored: 30 })
    expect(shownTexts(thirty, fields, SI).length).toBe('30')
  })

  it('keep the fraction that was typed for when the units change back', () => {
    const inches = typed(kept(''), '1 3/16', US)
    expect(shownTexts(inches, fields, SI).length).toBe('30.1625')
    expect(shownTexts(inches, fields, US).length).toBe('1 3/16')
  })

  it('read a kept value with every digit, whichever units it is shown in', () => {
    const third = kept('8.46666666667')
    expect(shownTexts(third, fields, SI).length).toBe('8.46667')
    expect(shownTexts(third, fields, US).length).toBe('0.333333')
    for (const now of [SI, US]) expect(readIn(third, now)).toEqual({ stored: 8.46666666667 })
  })

  it('leave what cannot be read as it is', () =>
    expect(shownTexts(typed(kept(''), '2o', SI), fields, US).length).toBe('2o'))
})
