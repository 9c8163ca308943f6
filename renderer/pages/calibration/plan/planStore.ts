import type { TypedTexts } from '../../../parts/forms/typedTexts.ts'
import { type TypedForm, useTypedTexts } from '../../../parts/forms/useTypedTexts.ts'
import { emptyPlan, type PlanTexts, planUnits } from './planForm.ts'

const storageKey = 'breakledger.calibration-plan'

/**
 * What was typed last, still there after another page, a reload, or a year. `stored`: as it lies on this computer; what of it is
 * damaged or not known counts as never typed.
 */
export function rememberedPlan(stored: string | null): TypedTexts<PlanTexts> {
  const kept = objectIn(stored)
  const known: Record<string, unknown> = { ...emptyPlan }
  const typedIn: Record<string, 'SI' | 'US'> = {}
  for (const [key, value] of Object.entries(kept)) if (typeof value === typeof known[key]) known[key] = value
  for (const [key, system] of Object.entries(isObject(kept.typedIn) ? kept.typedIn : {}))
    if (key in emptyPlan && (system === 'SI' || system === 'US')) typedIn[key] = system
  const isSteps = (steps: unknown): steps is string[][] =>
    Array.isArray(steps) && steps.every((step) => Array.isArray(step) && step.every((name) => typeof name === 'string'))
  return { texts: { ...(known as PlanTexts), steps: isSteps(known.steps) ? known.steps : [] }, typedIn }
}

function objectIn(stored: string | null): Record<string, unknown> {
  try {
    const kept: unknown = JSON.parse(stored ?? '{}')
    return isObject(kept) ? kept : {}
  } catch {
    return {}
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}

/** The plan as typed, kept on this computer with the units in which it was typed. */
export function usePlanTexts(): TypedForm<PlanTexts> {
  return useTypedTexts(
    () => rememberedPlan(localStorage.getItem(storageKey)),
    planUnits,
    ({ texts, typedIn }) => localStorage.setItem(storageKey, JSON.stringify({ ...texts, typedIn })),
  )
}
