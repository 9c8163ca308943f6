import type { FindingsSettings } from '#contract/findings/keptFinding.ts'
import type { Findings } from '#contract/findings/procedures.ts'

/** What the parts of the page are shown from. */
export type FindingsView = {
  found: Findings
  settings: FindingsSettings
  /** The age at which groups are looked at beside each other; null: of unknown age. */
  ageMonths: number | null
  /** What a group is called. */
  name(group: string): string
}
