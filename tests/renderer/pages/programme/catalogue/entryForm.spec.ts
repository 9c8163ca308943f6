import { expect, test } from 'vitest'
import { catalogueFields, catalogueKind } from '#contract/programme/catalogue.ts'
import { entryTextsOf, readEntry } from '#renderer/pages/programme/catalogue/entryForm.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const SI = quantitiesIn('SI')

test.each(catalogueKind.options)('reads a %s just as it was kept', (kind) => {
  const fields = catalogueFields.parse({ kind, name: 'one', ...(kind === 'lot' ? { adhesive: 'epoxy E4' } : {}) })
  expect(readEntry(kind, entryTextsOf(kind, fields), SI)).toEqual({ fields })
})

test('reads sizes in the units of the reader', () => {
  const texts = { ...entryTextsOf('joint-type', null), name: 'lap', overlapLengthMm: '1 3/16', areaMm2: '0.75' }
  // 1 3/16 in = 30.1625 mm; 0.75 in2 = 483.87 mm2
  expect(readEntry('joint-type', texts, quantitiesIn('US'))).toMatchObject({
    fields: { overlapLengthMm: 30.1625, overlapWidthMm: null, areaMm2: 483.87 },
  })
})

test('says what cannot be, field by field', () => {
  const errorsOf = (texts: object, kind: 'lot' | 'place' | 'wood') => {
    const read = readEntry(kind, { ...entryTextsOf(kind, null), ...texts }, SI)
    return 'errors' in read ? read.errors : {}
  }
  expect(errorsOf({}, 'lot')).toEqual({ name: 'Write the name.', adhesive: 'Say which adhesive it is a lot of.' })
  expect(errorsOf({ name: 'p', humidityPercent: '130' }, 'place')).toEqual({
    humidityPercent: 'Relative humidity cannot be that.',
  })
  expect(errorsOf({ name: 'beech', densityKgPerM3: 'heavy' }, 'wood').densityKgPerM3).toMatch(/heavy/)
  expect(errorsOf({ name: 'x'.repeat(201) }, 'wood')).toEqual({ name: 'This is too long.' })
})
