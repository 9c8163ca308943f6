import type { AccuracyClass, CalibrationStep, ClassRange } from '#contract/calibration/calibrationAssessment.ts'

export type StepErrors = Pick<CalibrationStep, 'q' | 'b' | 'v' | 'f0' | 'a'>
type GradedClass = Exclude<AccuracyClass, 'none'>

/** Largest permitted size of each error, percent, best class first. ISO 7500-1, class table, from memory. */
export const classLimits: readonly (Readonly<Record<keyof StepErrors, number>> & { readonly class: GradedClass })[] = [
  { class: '0.5', q: 0.5, b: 0.5, v: 0.75, f0: 0.05, a: 0.25 },
  { class: '1', q: 1, b: 1, v: 1.5, f0: 0.1, a: 0.5 },
  { class: '2', q: 2, b: 2, v: 3, f0: 0.2, a: 1 },
  { class: '3', q: 3, b: 3, v: 4.5, f0: 0.3, a: 1.5 },
]

const names = ['q', 'b', 'v', 'f0', 'a'] as const

/** Keeps an error that is the limit but for its last binary digit inside it. */
const lastDigit = 1e-9

/**
 * Best class whose limits all known errors of a step keep; `none` when none does, or when q is not known.
 *
 * Errors in percent; one that is null was not measured and takes no part, which the calibration's notes say.
 * Source: ISO 7500-1 class table (from memory). Checked: tests/domain/calibration/steps/accuracyClass.spec.ts.
 */
export function classOfStep(errors: StepErrors): AccuracyClass {
  if (errors.q === null) return 'none'
  const reached = classLimits.find((limits) =>
    names.every((name) => Math.abs(errors[name] ?? 0) <= limits[name] + lastDigit),
  )
  return reached?.class ?? 'none'
}

/**
 * The errors of a step that keep it from the next better class than its own, in the order q, b, v, f0, a; none where it has
 * the best class, or no q to judge.
 *
 * Source: as `classOfStep`. Checked: tests/domain/calibration/steps/accuracyClass.spec.ts.
 */
export function limitingErrors(step: StepErrors & Pick<CalibrationStep, 'class'>): (keyof StepErrors)[] {
  const rank = step.class === 'none' ? classLimits.length : classLimits.findIndex((one) => one.class === step.class)
  const better = classLimits[rank - 1]
  if (better === undefined) return []
  return names.filter((name) => Math.abs(step[name] ?? 0) > better[name] + lastDigit)
}

/** The class that all steps reach: the worst of theirs; `none` without steps. */
export function classOfAll(steps: readonly Pick<CalibrationStep, 'class'>[]): AccuracyClass {
  if (steps.length === 0) return 'none'
  const order: readonly AccuracyClass[] = [...classLimits.map((limits) => limits.class), 'none']
  return order[Math.max(...steps.map((step) => order.indexOf(step.class)))] ?? 'none'
}

/**
 * Over which range which class holds: from the lowest step on from which every step up to the highest reaches it, N.
 *
 * A class that holds no farther down than a better one is left out. Empty when the highest step reaches none.
 * Source: ISO 7500-1 judges a range by all its steps (from memory). Checked: tests/domain/calibration/steps/accuracyClass.spec.ts.
 */
export function classRanges(steps: readonly Pick<CalibrationStep, 'forceN' | 'class'>[]): ClassRange[] {
  const falling = steps.toSorted((one, other) => other.forceN - one.forceN)
  const highest = falling[0]
  if (highest === undefined) return []
  const ranges: ClassRange[] = []
  classLimits.forEach((limits, rank) => {
    const good = classLimits.slice(0, rank + 1).map((better) => better.class as AccuracyClass)
    const firstBad = falling.findIndex((step) => !good.includes(step.class))
    const lowest = falling[(firstBad < 0 ? falling.length : firstBad) - 1]
    if (lowest === undefined || lowest.forceN === ranges.at(-1)?.fromN) return
    ranges.push({ class: limits.class, fromN: lowest.forceN, toN: highest.forceN })
  })
  return ranges
}
