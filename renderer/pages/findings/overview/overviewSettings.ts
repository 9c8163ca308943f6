import type { MeanTreatment, OverviewFilter, OverviewView } from '#contract/findings/overview.ts'

/** How torn wood is treated in a table of means, as it is chosen. */
export const meanTreatments = [
  { value: 'observed', label: 'As observed' },
  { value: 'bond-only', label: 'Bond failures only' },
  { value: 'adjusted', label: 'Adjusted' },
] as const satisfies readonly { value: MeanTreatment; label: string }[]

/** What is chosen on the page. Factors as texts of a list: '' is all. */
export type OverviewSettings = {
  view: 'blocks' | 'means'
  adhesive: string
  jointType: string
  gap: string
  exposure: string
  age: string
  treatment: MeanTreatment
  /** '': the mean itself. */
  reference: string
}

/** Nothing is chosen of any factor. */
export const allLevels = { adhesive: '', jointType: '', gap: '', exposure: '', age: '', reference: '' } as const

export const firstOverviewSettings: OverviewSettings = {
  ...allLevels,
  view: 'blocks',
  treatment: 'observed',
}

/** A level of a factor that is a number, as a list names it. */
export function levelText(value: number | null): string {
  return value === null ? 'unknown' : String(value)
}

/** The level that such a text names. */
export function levelOf(text: string): number | null {
  return text === levelText(null) ? null : Number(text)
}

/** Which blocks are asked for. */
export function filterOf(studyId: number | null, settings: OverviewSettings): OverviewFilter {
  const named = (chosen: string) => (chosen === '' ? null : [chosen])
  const counted = (chosen: string) => (chosen === '' ? null : [levelOf(chosen)])
  return {
    studyId,
    adhesives: named(settings.adhesive),
    jointTypes: named(settings.jointType),
    bondLineGapsMm: counted(settings.gap),
    exposures: named(settings.exposure),
    agesMonths: counted(settings.age),
  }
}

/** What is shown of them. */
export function viewOf({ view, treatment, reference }: OverviewSettings): OverviewView {
  if (view === 'blocks') return { kind: 'blocks' }
  return { kind: 'means', woodFailure: treatment, reference: reference === '' ? null : reference }
}
