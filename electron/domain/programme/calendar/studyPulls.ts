import type { PullDecision } from '#contract/programme/pull.ts'
import type { PullBlocks, PullSummary } from '#contract/programme/pullProcedures.ts'
import type { Study } from '#contract/programme/study.ts'
import { plusMonths } from './plusMonths.ts'
import { pullState } from './pullState.ts'

/** Blocks of a study that were glued on one day for one age; `ageMonths` null: its spares, of so many series. */
export type GluedCount = PullBlocks & { gluedOn: string; ageMonths: number | null; series: number }

/** What the pulls of a study follow from: days of glue-up in the order in which they were recorded, decisions oldest first. */
export type PullSource = {
  study: Study
  counts: readonly GluedCount[]
  /** Planned blocks for each age that nobody glued yet. */
  unglued: readonly { ageMonths: number | null; blocks: number }[]
  decisions: readonly PullDecision[]
  /** How often its glue-ups were corrected. */
  corrections: number
}

/** A day from which ages are counted: of a glue-up, or before any the one on which the study is to start. */
type Anchor = { gluedOn: string | null; day: string; index: number }

/** The pulls of a study as they stand on a day, by the day on which they are due. Empty while no day is known to count from. */
export function studyPulls(source: PullSource, today: string): PullSummary[] {
  return anchorsOf(source)
    .flatMap((anchor) => pullsFrom(source, anchor, today))
    .sort((a, b) => (a.dueOn < b.dueOn ? -1 : a.dueOn > b.dueOn ? 1 : a.ageMonths - b.ageMonths))
}

function anchorsOf({ study, counts }: PullSource): Anchor[] {
  const days = [...new Set(counts.map(({ gluedOn }) => gluedOn))]
  const { startOn } = study.fields
  if (days.length > 0) return days.map((day, index) => ({ gluedOn: day, day, index }))
  // The first day of glue-up takes this one's place, under the same key
  return startOn === null ? [] : [{ gluedOn: null, day: startOn, index: 0 }]
}

function pullsFrom(source: PullSource, anchor: Anchor, today: string): PullSummary[] {
  const { study, decisions, corrections } = source
  const blocks = blocksByAge(source, anchor)
  const about = decisions.filter(({ gluedOn }) => gluedOn === null || gluedOn === anchor.gluedOn)
  const addedAges = about.filter(({ kind, ageMonths }) => kind === 'added' && !blocks.has(ageMonths))
  const ages = [...new Set([...blocks.keys(), ...addedAges.map(({ ageMonths }) => ageMonths)])]
  const spares = sparesOf(source, anchor)
  return ages.map((ageMonths) => {
    const own = about.filter((one) => one.ageMonths === ageMonths)
    const plannedOn = plusMonths(anchor.day, ageMonths)
    const planned = blocks.get(ageMonths)
    const word = decided(own, plannedOn, planned !== undefined)
    const counted = planned ?? spares.take(word.skipped ? 0 : word.blocksPerSeries)
    const { windowDays } = study.fields
    const facts = { ...word, windowDays, glued: anchor.gluedOn !== null, ...counted }
    return {
      studyId: study.studyId,
      gluedOn: anchor.gluedOn,
      ageMonths,
      key: `${study.studyId}-${anchor.index}-${ageMonths}`,
      sequence: study.revision - 1 + (anchor.gluedOn === null ? 0 : 1 + corrections) + own.length,
      studyTitle: study.fields.title,
      demo: study.fields.demo,
      plannedOn,
      dueOn: word.dueOn,
      windowDays,
      state: pullState(facts, today),
      added: planned === undefined,
      blocks: counted,
      decision: own.at(-1) ?? null,
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

/** Hands out the spares of a day to the pulls that were added and are to be, in their order: first those that were broken, then those that wait. */
function sparesOf({ counts }: PullSource, { gluedOn }: Anchor) {
  const spares = counts.find((one) => one.ageMonths === null && one.gluedOn === gluedOn)
  let { broken, waiting } = spares ?? { broken: 0, waiting: 0 }
  return {
    take(perSeries: number): PullBlocks {
      const planned = perSeries * (spares?.series ?? 0)
      const taken = { planned, broken: Math.min(planned, broken), waiting: 0, lost: 0 }
      taken.waiting = Math.min(planned - taken.broken, waiting)
      taken.lost = planned - taken.broken - taken.waiting
      broken -= taken.broken
      waiting -= taken.waiting
      return taken
    },
  }
}
