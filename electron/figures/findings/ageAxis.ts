import type { Axis } from '../axes/axis.ts'

/** Ages drawn along an axis: where each lies on it, and what stands below. */
export type AgeAxis = { axis: Axis; title: string; place(ageMonths: number): number }

/** Below this share of the whole, ages seen would stand all at the left edge. */
const crowdedBelow = 0.3
/** Round ages, months; further ones every twenty years. */
const roundMonths = [0, 3, 6, 12, 24, 36, 60, 120, 180, 240, 360, 480, 600, 720, 960, 1200]

/**
 * The axis from age 0 to the end; `lastSeenMonths` is the last age at which blocks were broken. Where that is a small part of the whole
 * the ages are spaced by their square roots, which the title says, so that the young ones come apart.
 */
export function ageAxis(lastSeenMonths: number, endMonths: number): AgeAxis {
  const end = Math.max(endMonths, 1)
  const rooted = lastSeenMonths < crowdedBelow * end
  const place = rooted ? Math.sqrt : (ageMonths: number) => ageMonths
  const inYears = end > 24
  const unit = inYears ? 12 : 1
  const rounded = roundMonths.filter((age) => age <= end && age % (inYears && !rooted ? 12 : 1) === 0)
  // Names that would touch give way to those farther apart
  const kept = rounded.filter((age, i) => {
    const next = rounded.slice(i + 1)
    return i === 0 || !next.some((later) => place(later) - place(age) < place(end) / 14)
  })
  const named = kept.includes(end) ? kept : [...kept.filter((age) => place(end) - place(age) >= place(end) / 14), end]
  const room = 0.05 * place(end)
  return {
    place,
    title: `age, ${inYears ? 'years' : 'months'}${rooted ? ', spaced by its square root' : ''}`,
    axis: {
      from: -room,
      to: place(end) + room / 2,
      ticks: named.map((age) => ({ value: place(age), label: tickWords(age / unit) })),
    },
  }
}

const tickWords = (value: number) => String(Math.round(value * 100) / 100)
