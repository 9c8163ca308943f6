// Held by tests/browser/everyScreen.spec.ts.
import { useState } from 'react'
import type { Preferences } from '#contract/settings/settings.ts'
import { writeTyped } from '#words/units/numbers.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { readCapacity, readScale } from './scaleForm.ts'

/** Rated load and scale as they are typed. */
export type ForceTexts = {
  capacity: string
  scale: string
  setCapacity(text: string): void
  setScale(text: string): void
  /** They say something else than what is kept. */
  changed: boolean
  /** What they say; null while one of them cannot be read. */
  read: Pick<Preferences, 'capacityN' | 'nPerCount'> | null
  errors: { capacity: string | null; scale: string | null }
}

/** The rated load, in the units of the program, and what a count is worth: as kept, until something else is typed. */
export function useForceTexts({ capacityN, nPerCount }: Pick<Preferences, 'capacityN' | 'nPerCount'>): ForceTexts {
  const { force } = useQuantities()
  const keptCapacity = writeTyped(capacityN, force.factor)
  const keptScale = nPerCount === null ? '' : String(nPerCount)
  const [capacity, setCapacity] = useState(keptCapacity)
  const [scale, setScale] = useState(keptScale)
  const capacityRead = readCapacity(capacity, force.factor, force.unit)
  const scaleRead = readScale(scale)
  return {
    capacity,
    scale,
    setCapacity,
    setScale,
    changed: capacity !== keptCapacity || scale !== keptScale,
    read: 'error' in capacityRead || 'error' in scaleRead ? null : { ...capacityRead, ...scaleRead },
    errors: {
      capacity: 'error' in capacityRead ? capacityRead.error : null,
      scale: 'error' in scaleRead ? scaleRead.error : null,
    },
  }
}
