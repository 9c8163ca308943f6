import type { FindingsFilter } from '#contract/findings/procedures.ts'

type TraitsFilter = Pick<FindingsFilter, 'adhesives' | 'jointTypes' | 'exposures' | 'bondLineGapsMm'>
type Traits = {
  readonly adhesive: string
  readonly jointType: string
  readonly exposure: string
  readonly bondLineGapMm: number | null
}

/** Whether a value is among those that are asked for; null: all are. Checked: tests/domain/findings/traitsFilter.spec.ts. */
export function isAmong<Value>(asked: readonly Value[] | null, value: Value): boolean {
  return asked === null || asked.includes(value)
}

/** Whether something was made as a filter asks. Checked: tests/domain/findings/traitsFilter.spec.ts. */
export function hasTraits(one: Traits, { adhesives, jointTypes, exposures, bondLineGapsMm }: TraitsFilter): boolean {
  return (
    isAmong(adhesives, one.adhesive) &&
    isAmong(jointTypes, one.jointType) &&
    isAmong(exposures, one.exposure) &&
    isAmong(bondLineGapsMm, one.bondLineGapMm)
  )
}
