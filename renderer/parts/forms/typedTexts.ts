import { readTypedNumber } from '#domain/units/typedNumber.ts'
import { writeTyped } from '#words/units/numbers.ts'
import { type Quantities, quantitiesIn } from '#words/units/quantities.ts'
import { convertTyped, type FieldUnit, withItsUnit } from '#words/units/typedQuantity.ts'

type System = Quantities['system']

/** The fields of a form whose unit follows the units of the program. */
export type UnitFields<Key extends PropertyKey> = Partial<Record<Key, (quantities: Quantities) => FieldUnit>>

/**
 * The texts of a form, each as it was typed, and in which units. A field that nobody touched holds what is kept, in SI units
 * and with every digit, so that no number changes because it was shown in other units meanwhile.
 */
export type TypedTexts<Texts> = { texts: Texts; typedIn: Partial<Record<keyof Texts, System>> }

/** The texts as they stand in the fields, in the units of the program now. */
export function shownTexts<Texts extends object>(
  { texts, typedIn }: TypedTexts<Texts>,
  fields: UnitFields<keyof Texts>,
  now: Quantities,
): Texts {
  return eachField(texts, fields, (text, key, unitIn) => {
    const from = typedIn[key]
    if (from === now.system) return text
    const [before, after] = [unitIn(quantitiesIn(from ?? 'SI')).unit, unitIn(now).unit]
    if (from !== undefined || before !== after) return convertTyped(text, before, after)
    // Kept with every digit, shown with as many as anybody types
    const kept = readTypedNumber(text)
    return kept.kind === 'number' && kept.unit === '' ? writeTyped(kept.value, 1) : text
  })
}

/** The texts to be read: one that was typed in other units has its own behind it. */
export function readableTexts<Texts extends object>(
  { texts, typedIn }: TypedTexts<Texts>,
  fields: UnitFields<keyof Texts>,
  now: Quantities,
): Texts {
  return eachField(texts, fields, (text, key, unitIn) => {
    const from = typedIn[key] ?? 'SI'
    return from === now.system ? text : withItsUnit(text, unitIn(quantitiesIn(from)).unit)
  })
}

/** The texts after the person changed what the fields show. */
export function changedTexts<Texts extends object>(
  before: TypedTexts<Texts>,
  shown: Texts,
  next: Texts,
  now: Quantities,
): TypedTexts<Texts> {
  const changed = (Object.keys(next) as (keyof Texts)[]).filter((key) => next[key] !== shown[key])
  const texts = { ...before.texts }
  const typedIn = { ...before.typedIn }
  for (const key of changed) {
    texts[key] = next[key]
    typedIn[key] = now.system
  }
  return { texts, typedIn }
}

function eachField<Texts extends object>(
  texts: Texts,
  fields: UnitFields<keyof Texts>,
  write: (text: string, key: keyof Texts, unitIn: (quantities: Quantities) => FieldUnit) => string,
): Texts {
  const written = { ...texts }
  for (const key of Object.keys(fields) as (keyof Texts)[]) {
    const unitIn = fields[key]
    const text = texts[key]
    // A field with a unit is a text that is typed
    if (unitIn !== undefined && typeof text === 'string') written[key] = write(text, key, unitIn) as Texts[keyof Texts]
  }
  return written
}
