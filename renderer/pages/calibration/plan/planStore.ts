// Held by tests/browser/calibrationRun.spec.ts.
import { useState } from 'react'
import { emptyPlan, type PlanTexts } from './planForm.ts'

const storageKey = 'breakledger.calibration-plan'

/** What was typed last, still there after another page, a reload, or a year. */
function remembered(): PlanTexts {
  const kept: unknown = JSON.parse(localStorage.getItem(storageKey) ?? '{}')
  const known: Record<string, unknown> = { ...emptyPlan }
  if (typeof kept === 'object' && kept !== null)
    for (const [key, value] of Object.entries(kept)) if (typeof value === typeof known[key]) known[key] = value
  const isSteps = (steps: unknown): steps is string[][] =>
    Array.isArray(steps) && steps.every((step) => Array.isArray(step) && step.every((name) => typeof name === 'string'))
  return { ...(known as PlanTexts), steps: isSteps(known.steps) ? known.steps : [] }
}

/** The plan as typed, kept on this computer. */
export function usePlanTexts(): [PlanTexts, (change: Partial<PlanTexts>) => void] {
  const [texts, setTexts] = useState(remembered)
  return [
    texts,
    (change) => {
      const next = { ...texts, ...change }
      localStorage.setItem(storageKey, JSON.stringify(next))
      setTexts(next)
    },
  ]
}
