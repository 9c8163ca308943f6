import { type Quantities, quantitiesIn } from '#words/units/quantities.ts'
import { usePreferences } from './hostContext.ts'

/** The quantities in the units that the whole program shows. Only below a frame that waits for the host. */
export function useQuantities(): Quantities {
  return quantitiesIn(usePreferences().units)
}
