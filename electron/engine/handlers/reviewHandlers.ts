import { Trouble } from '#contract/errors.ts'
import type { Handlers } from '#contract/procedures.ts'
import type { reviewProcedures } from '#contract/reviewProcedures.ts'

/** Reviewing curves. */
export function reviewHandlers(): Pick<
  Handlers,
  Exclude<keyof typeof reviewProcedures, 'breaks.pickPeak' | 'breaks.declarePremature' | 'breaks.peakAsFound'>
> {
  const missing = async () => {
    throw new Trouble('unsupported', 'This is not there yet.', 'Wait for it.')
  }
  return {
    'breaks.ids': missing,
    'breaks.group': missing,
    'breaks.filtered': missing,
    'breaks.slope': missing,
    'comparison.make': missing,
    'reevaluations.begin': missing,
    'reevaluations.list': missing,
    'reevaluations.get': missing,
    'reevaluations.changes': missing,
    'reevaluations.decide': missing,
  }
}
