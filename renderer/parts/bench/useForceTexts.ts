// Held by tests/browser/everyScreen.spec.ts.
import type { Preferences } from '#contract/settings/settings.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { keptText } from '#words/units/typedQuantity.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { shownTexts } from '../forms/typedTexts.ts'
import { untouched, useTypedTexts } from '../forms/useTypedTexts.ts'
import { type ForceTexts, forceUnits, readCapacity, readScale } from './scaleForm.ts'

export type ForceForm = ForceTexts & {
  setCapacity(text: string): void
  setScale(text: string): void
  /** They say something else than what is kept. */
  changed: boolean
  /** What they say; null while one of them cannot be read. */
  read: Pick<Preferences, 'capacityN' | 'nPerCount'> | null
  errors: { capacity: string | null; scale: string | null }
}

/** The rated load, in the units of the program, and what a count is worth: as kept, until something else is typed. */
export function useForceTexts(preferences: Pick<Preferences, 'capacityN' | 'nPerCount'>): ForceForm {
  const quantities = useQuantities()
  const form = useTypedTexts(() => untouched(keptTexts(preferences)), forceUnits)
  const { capacity, scale } = form.shown
  const kept = shownTexts(untouched(keptTexts(preferences)), forceUnits, quantities)
  const capacityRead = readCapacity(form.readable.capacity, quantities)
  const scaleRead = readScale(form.readable.scale, quantities)
  return {
    capacity,
    scale,
    setCapacity: (text) => form.onTexts({ capacity: text, scale }),
    setScale: (text) => form.onTexts({ capacity, scale: text }),
    changed: capacity !== kept.capacity || scale !== kept.scale,
    read: 'error' in capacityRead || 'error' in scaleRead ? null : { ...capacityRead, ...scaleRead },
    errors: {
      capacity: 'error' in capacityRead ? capacityRead.error : null,
      scale: 'error' in scaleRead ? scaleRead.error : null,
    },
  }
}

function keptTexts({ capacityN, nPerCount }: Pick<Preferences, 'capacityN' | 'nPerCount'>): ForceTexts {
  const { force, forcePerCount } = quantitiesIn('SI')
  return { capacity: keptText(capacityN, force), scale: keptText(nPerCount, forcePerCount) }
}
