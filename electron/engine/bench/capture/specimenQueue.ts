import type { Archive } from '#archive/archive.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'

/** Which specimen lies in the press, and which comes after it. */
export type SpecimenQueue = {
  current(): SpecimenSummary | null
  next(): SpecimenSummary | null
  waiting(): number
  /** The specimen that a capture belongs to which begins now; goes on first when the one at hand was just broken. */
  forCapture(): Promise<number | null>
  /** The break of that specimen is stored: it is spent, and in hands-free work makes room once `goOn` is called. */
  spent(specimenId: number): Promise<void>
  /** Goes on to the next one if the one at hand is spent. */
  goOnIfSpent(): Promise<void>
  /** Goes on to the next one whatever became of the one at hand; after the last comes the first that was passed over. */
  goOn(): Promise<void>
  /** null: the next capture belongs to no specimen. Rejects with Trouble `not-found`. */
  take(specimenId: number | null): Promise<void>
  /** Reads again after records changed. */
  refresh(): Promise<void>
}

/** The order of work is the natural order of the specimens' numbers. `enabled` false: captures belong to no specimen. */
export function createSpecimenQueue(
  archive: Pick<Archive, 'specimen' | 'waitingSpecimens'>,
  enabled: boolean,
  onChange: () => void,
): SpecimenQueue {
  let current: SpecimenSummary | null = null
  let next: SpecimenSummary | null = null
  let waiting = 0
  let currentIsSpent = false
  let withoutSpecimen = !enabled
  let lastId: number | null = null
  // Every change reads the archive, so changes take turns.
  let turn: Promise<unknown> = Promise.resolve()

  function inTurn<T>(change: () => Promise<T>): Promise<T> {
    const done = turn.then(change)
    // What fails is told to whoever asked for it; it keeps no later change from its turn.
    turn = done.catch(() => {})
    return done
  }

  async function following(afterId: number | null, notId: number | null): Promise<SpecimenSummary | null> {
    const later = await archive.waitingSpecimens(afterId, 2)
    const found = later.rows.find((row) => row.specimenId !== notId)
    if (found !== undefined || afterId === null) return found ?? null
    const fromStart = await archive.waitingSpecimens(null, 2)
    return fromStart.rows.find((row) => row.specimenId !== notId) ?? null
  }

  async function settle(specimen: SpecimenSummary | null) {
    current = specimen
    if (specimen !== null) lastId = specimen.specimenId
    next = enabled ? await following(lastId, specimen?.specimenId ?? null) : null
    waiting = (await archive.waitingSpecimens(null, 1)).total
    onChange()
  }

  async function advance() {
    if (!enabled) return
    withoutSpecimen = false
    currentIsSpent = false
    await settle(await following(lastId, current?.specimenId ?? null))
  }

  return {
    current: () => current,
    next: () => next,
    waiting: () => waiting,
    forCapture: () =>
      inTurn(async () => {
        if (currentIsSpent) await advance()
        return current?.specimenId ?? null
      }),
    spent: (specimenId) =>
      inTurn(async () => {
        if (current?.specimenId !== specimenId) return
        currentIsSpent = true
        await settle((await archive.specimen(specimenId)).current)
      }),
    goOnIfSpent: () => inTurn(async () => void (currentIsSpent && (await advance()))),
    goOn: () => inTurn(advance),
    take: (specimenId) =>
      inTurn(async () => {
        const taken = specimenId === null ? null : (await archive.specimen(specimenId)).current
        withoutSpecimen = specimenId === null
        currentIsSpent = false
        await settle(taken)
      }),
    refresh: () =>
      inTurn(async () => {
        if (current !== null) await settle((await archive.specimen(current.specimenId)).current)
        else await settle(withoutSpecimen ? null : await following(null, null))
      }),
  }
}
