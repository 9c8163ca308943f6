import { type AskedQuestion, type FindingsSettings, findingsSettings } from '#contract/findings/keptFinding.ts'
import type { FindingKind } from '#contract/findings/lines.ts'
import type { StudySummary } from '#contract/programme/studyRecord.ts'
import { filterOf } from '#domain/findings/askedBlocks.ts'
import { treatmentChoice } from '#words/findings/treatmentWords.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'

/** What is asked of the results. */
export const askedQuestions = [
  { value: 'strongest', label: 'Which hold best?' },
  { value: 'overall', label: 'Which hold best overall?' },
  { value: 'changed', label: 'What changed with age?' },
  { value: 'as-good', label: 'Is one as good as another?' },
  { value: 'torn-wood', label: 'Does torn wood change the order?' },
  { value: 'next', label: 'What should I do next?' },
] as const satisfies readonly { value: AskedQuestion; label: string }[]

/** The kinds of lines that answer each question, and those of the table below them. Notes on these come with them. */
const always: readonly FindingKind[] = ['group-summary']
export const kindsFor: Record<AskedQuestion, readonly FindingKind[]> = {
  strongest: [...always, 'rank', 'shrunken-mean', 'letters', 'spread-test', 'means-test'],
  overall: [...always],
  changed: [...always, 'retention', 'trend', 'ageing-model', 'forecast'],
  'as-good': [...always, 'against-reference', 'equivalence', 'spread-test'],
  'torn-wood': [...always],
  next: [...always],
}

/** How torn wood is treated, as it is chosen. */
export const treatments = (['observed', 'bond-only', 'censored', 'adjusted'] as const).map((value) => ({
  value,
  label: treatmentChoice({ woodFailure: value, distribution: null }),
}))

/** What is asked when the page is opened. */
export const firstSettings: FindingsSettings = findingsSettings.parse({})

const { adhesive, exposure, jointType, bondLineGapMm, ageMonths, reference, referenceAdhesive, overall } = firstSettings
/** No choice among blocks: what one study has another may lack. */
export const ofAllBlocks = {
  ...{ adhesive, exposure, jointType, bondLineGapMm, ageMonths },
  ...{ reference, referenceAdhesive, overall },
}

/** The settings with the reference of the chosen study, where it has results and nobody chose another. */
export function withReferenceOf(
  study: Pick<StudySummary, 'fields'> | undefined,
  settings: FindingsSettings,
  adhesives: readonly string[],
): FindingsSettings {
  const reference = study?.fields.referenceAdhesive ?? ''
  return settings.overall.reference === '' && adhesives.includes(reference)
    ? { ...settings, overall: { ...settings.overall, reference } }
    : settings
}

/** A typed number, with a comma or a point; null where it is none. */
function typedNumber(text: string): number | null {
  const value = text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.'))
  return Number.isFinite(value) ? value : null
}

/** What is said of a typed percentage that cannot be used, and what is used for it. */
export function percentNeeded(upTo: 'at most 100' | 'below 100', used: number): string {
  return `Say a percentage above 0, ${upTo}; ${used} is used.`
}

/** A typed limit of torn wood, percent; null where it is none above 0 and up to 100. */
export function typedLimit(text: string): number | null {
  const value = typedNumber(text)
  return value !== null && value > 0 && value <= 100 ? value : null
}

/** A typed factor of the adjustment, 0 or more; null where it is none. */
export function typedFactor(text: string): number | null {
  const value = typedNumber(text)
  return value !== null && value >= 0 ? value : null
}

/**
 * How torn wood is treated, with the usual numbers where none is typed that could be used. Only what is fitted over the ages knows
 * of bonds that held more; means and ranks are as observed then, and must not be called otherwise.
 */
export function treatmentOf({ asked, woodFailure, limitPercent, adjustFactor }: FindingsSettings) {
  return {
    woodFailure: woodFailure === 'censored' && asked !== 'changed' ? 'observed' : woodFailure,
    limitPercent: typedLimit(limitPercent) ?? 75,
    adjustFactor: typedFactor(adjustFactor) ?? 1,
  } as const
}

/** How torn wood is treated in the means of groups and in their figures. */
export function treatmentOfMeans(settings: FindingsSettings) {
  const treatment = treatmentOf(settings)
  return treatment.woodFailure === 'censored' ? ({ ...treatment, woodFailure: 'observed' } as const) : treatment
}

/**
 * The margin in percent within which two groups are alike, as it is typed, or one clear sentence; null: nothing was typed, and
 * nothing is asked.
 */
export function readMargin(text: string): { percent: number | null; error: string | null } {
  const read = readQuantity(text, percentUnit, 'the margin in percent, such as 10')
  if ('error' in read) return { percent: null, error: read.error }
  const percent = read.stored
  if (percent === null) return { percent, error: 'Write within how many percent groups are taken for alike.' }
  return percent > 0 && percent < 100
    ? { percent, error: null }
    : { percent: null, error: 'Write a margin above 0 % and below 100 %.' }
}

const percentUnit = { unit: '%', factor: 1 }

/** A typed share of the first strength, percent above 0 and below 100; null where it is none. */
export function typedShare(text: string): number | null {
  const value = typedNumber(text)
  return value !== null && value > 0 && value < 100 ? value : null
}

/** A typed age in years, above 0 and up to 100; null where it is none. */
export function typedYears(text: string): number | null {
  const value = typedNumber(text)
  return value !== null && value > 0 && value <= 100 ? value : null
}

/** A typed change, percent a year above 0 and up to 100; null where it is none. */
export function typedChange(text: string): number | null {
  const value = typedNumber(text)
  return value !== null && value > 0 && value <= 100 ? value : null
}

/** What is asked of results over their ages; what cannot be read counts as not said. */
export function ageingQuestionOf(settings: FindingsSettings) {
  const years = typedYears(settings.atYears)
  return {
    options: treatmentOf(settings),
    filter: filterOf(settings),
    sharePercent: typedShare(settings.sharePercent) ?? 80,
    atMonths: years === null ? null : years * 12,
  }
}

/** What is asked of what to do next; what cannot be read counts as not said. */
export function nextQuestionOf(settings: FindingsSettings) {
  return {
    filter: filterOf(settings),
    changePercentPerYear: typedChange(settings.changePercent) ?? 1,
    marginPercent: readMargin(settings.marginPercent).percent ?? 10,
    referenceAdhesive: settings.referenceAdhesive === '' ? null : settings.referenceAdhesive,
  }
}

/** Groups in the order of what `meanOf` says of them, highest first; those without one are left out. */
export function inOrder(groups: readonly string[], meanOf: (group: string) => number | null): string[] {
  return groups
    .flatMap((group) => {
      const mean = meanOf(group)
      return mean === null ? [] : [{ group, mean }]
    })
    .sort((one, other) => other.mean - one.mean)
    .map(({ group }) => group)
}
