import type { PullDecision, PullName } from '#contract/programme/pull.ts'
import type { PullBlocks, PullSummary } from '#contract/programme/pullProcedures.ts'
import type { Study } from '#contract/programme/study.ts'
import { dayNumbers, type GlueUpDays } from './dayNumbers.ts'
import { plusMonths } from './plusMonths.ts'
import { pullState } from './pullState.ts'
import { type Spare, shareSpares } from './shareSpares.ts'

/** Blocks of a study that were glued on one day for one age; `ageMonths` null: its spares. */
export type GluedCount = PullBlocks & { gluedOn: string; ageMonths: number | null }

/** What the pulls of a study follow from: days of glue-up in the order in which they were recorded, decisions oldest first. */
export type PullSource = {
  study: Study
  counts: readonly GluedCount[]
  /** Planned blocks for each age that nobody glued yet. */
  unglued: readonly { ageMonths: number | null; blocks: number }[]
  decisions: readonly PullDecision[]
  /** Its spares in the order in which they are to be broken; empty while no pull was added that would take them. */
  spares: readonly Spare[]
  /** How often its glue-ups were corrected. */
  corrections: number
  /** Its glue-ups in the order in which they were recorded; empty while none was corrected. */
  glueUps: readonly GlueUpDays[]
}

/** A day from which ages are counted: of a glue-up, or before any the one on which the study is to start. */
type Anchor = { gluedOn: string | null; day: string; number: number }

/** The pulls of a study as they stand on a day, by the day on which they are due. Empty while no day is known to count from. */
export function studyPulls(source: PullSource, today: string): PullSummary[] {
  return anchorsOf(source)
    .flatMap((anchor) => pullsFrom(source, anchor, today))
    .sort((a, b) => (a.dueOn < b.dueOn ? -1 : a.dueOn > b.dueOn ? 1 : a.ageMonths - b.ageMonths))
}

/** The spares that wait for a pull which was added, of one day of glue-up or of all; none where the plan has its age. */
export function sparesWaiting(source: PullSource, { gluedOn, ageMonths }: Omit<PullName, 'studyId'>): number[] {
  return anchorsOf(source)
    .filter((anchor) => gluedOn === null || anchor.gluedOn === gluedOn)
    .flatMap((anchor) => agesFrom(source, anchor).filter((one) => one.ageMonths === ageMonths))
    .flatMap(({ share }) => share?.waiting ?? [])
}

function anchorsOf({ study, counts, glueUps }: PullSource): Anchor[] {
  const days = [...new Set(counts.map(({ gluedOn }) => gluedOn))]
  const numbers = dayNumbers(glueUps)
  const { startOn } = study.fields
  if (days.length > 0) return days.map((day, at) => ({ gluedOn: day, day, number: numbers.get(day) ?? at }))
  // The first day of glue-up takes this one's place, under the same key
  return startOn === null ? [] : [{ gluedOn: null, day: startOn, number: 0 }]
}

/** The ages that blocks of a day leave the store at, each with what was decided about it and, where it was added, its spares. */
function agesFrom(source: PullSource, anchor: Anchor) {
  const blocks = blocksByAge(source, anchor)
  const about = source.decisions.filter(({ gluedOn }) => gluedOn === null || gluedOn === anchor.gluedOn)
  const addedAges = about.filter(({ kind, ageMonths }) => kind === 'added' && !blocks.has(ageMonths))
  const ages = [...new Set([...blocks.keys(), ...addedAges.map(({ ageMonths }) => ageMonths)])].map((ageMonths) => {
    const decisions = about.filter((one) => one.ageMonths === ageMonths)
    const plannedOn = plusMonths(anchor.day, ageMonths)
    const planned = blocks.get(ageMonths)
    return { ageMonths, decisions, plannedOn, planned, word: decided(decisions, plannedOn, planned !== undefined) }
  })
  const added = ages.filter(({ planned }) => planned === undefined)
  const shares = shareSpares(
    source.spares.filter(({ gluedOn }) => gluedOn === anchor.gluedOn),
    added.map(({ ageMonths, word }) => ({ ageMonths, blocksPerSeries: word.skipped ? 0 : word.blocksPerSeries })),
  )
  return ages.map((one) => ({ ...one, share: shares[added.indexOf(one)] }))
}

function pullsFrom(source: PullSource, anchor: Anchor, today: string): PullSummary[] {
  const { study, corrections } = source
  const { studyId, revision, fields } = study
  const { title, demo, windowDays } = fields
  return agesFrom(source, anchor).map(({ ageMonths, decisions, plannedOn, planned, word, share }) => {
    const blocks = planned ?? share!.blocks
    const facts = { ...word, windowDays, glued: anchor.gluedOn !== null, ...blocks }
    // A correction may take a decision from day to day, and no number is to fall: from the first on those of every day count
    const counted = corrections === 0 ? decisions : source.decisions.filter((one) => one.ageMonths === ageMonths)
    return {
      studyId,
      gluedOn: anchor.gluedOn,
      ageMonths,
      key: `${studyId}-${anchor.number}-${ageMonths}`,
      sequence: revision - 1 + (anchor.gluedOn === null ? 0 : 1 + corrections) + counted.length,
      studyTitle: title,
      demo,
      plannedOn,
      dueOn: word.dueOn,
      windowDays,
      state: pullState(facts, today),
      added: planned === undefined,
      blocks,
      decision: decisions.at(-1) ?? null,
    }
  })
}

/** What decisions, oldest first, leave of a pull; one that the plan does not have goes again when it is restored. */
function decided(decisions: readonly PullDecision[], plannedOn: string, inPlan: boolean) {
  let standing = { dueOn: plannedOn, skipped: false, blocksPerSeries: 0 }
  for (const { kind, dueOn, blocksPerSeries } of decisions) {
    if (kind === 'skipped') standing = { ...standing, skipped: true }
    else if (kind === 'restored') standing = { ...standing, dueOn: plannedOn, skipped: !inPlan }
    else
      standing = {
        dueOn: dueOn ?? plannedOn,
        skipped: false,
        blocksPerSeries: blocksPerSeries ?? standing.blocksPerSeries,
      }
  }
  return standing
}

function blocksByAge({ study, counts, unglued }: PullSource, { gluedOn }: Anchor): Map<number, PullBlocks> {
  if (gluedOn === null) {
    const planned = new Map(unglued.map(({ ageMonths, blocks }) => [ageMonths, blocks]))
    return new Map(
      study.fields.agesMonths.map((age) => [age, { planned: planned.get(age) ?? 0, waiting: 0, broken: 0, lost: 0 }]),
    )
  }
  return new Map(
    counts.flatMap(({ gluedOn: day, ageMonths, planned, waiting, broken, lost }) =>
      day === gluedOn && ageMonths !== null ? [[ageMonths, { planned, waiting, broken, lost }] as const] : [],
    ),
  )
}
