// Held by tests/browser/formsRun.spec.ts.
import { useState } from 'react'
import { useQuantities } from '../../host/useQuantities.ts'
import { changedTexts, readableTexts, shownTexts, type TypedTexts, type UnitFields } from './typedTexts.ts'

/** A form being typed: what its fields show, what is to be read, and how it changes. */
export type TypedForm<Texts> = { shown: Texts; readable: Texts; onTexts(next: Texts): void }

/**
 * The texts of a form, converted when the units of the program change. `kept`: what it begins with, in SI units, with what
 * was typed in others where that is remembered; `fields`: those whose unit follows the program's.
 */
export function useTypedTexts<Texts extends object>(
  kept: () => TypedTexts<Texts>,
  fields: UnitFields<keyof Texts>,
  onChange?: (typed: TypedTexts<Texts>) => void,
): TypedForm<Texts> {
  const now = useQuantities()
  const [typed, setTyped] = useState(kept)
  const shown = shownTexts(typed, fields, now)
  return {
    shown,
    readable: readableTexts(typed, fields, now),
    onTexts(next) {
      const changed = changedTexts(typed, shown, next, now)
      setTyped(changed)
      onChange?.(changed)
    },
  }
}

/** Texts that nobody has touched yet, in SI units. */
export function untouched<Texts>(texts: Texts): TypedTexts<Texts> {
  return { texts, typedIn: {} }
}
