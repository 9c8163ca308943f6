import type { Archive } from '#archive/archive.ts'
import type { BenchState } from '#contract/bench/bench.ts'
import { Trouble } from '#contract/errors.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { createPressOrder } from './pressOrder.ts'

/** Which specimen lies in the press, and which comes after it. */
export type SpecimenQueue = {
  current(): SpecimenSummary | null
  /** The one at hand broke before, and was taken all the same. */
  again(): boolean
  next(): SpecimenSummary | null
  waiting(): number
  /** How far the breaking session is that says what comes next; null: there is none. */
  session(): BenchState['breaking']
  /** The specimen that a capture belongs to which begins now; goes on first when the one at hand is broken. */
  forCapture(): Promise<number | null>
  /** A capture of that specimen ended with a break: from now on it is spent, however long the disk takes to store it. */
  broke(specimenId: Promise<number | null>): void
  /** The break of that specimen is stored: it is shown as broken, and in hands-free work makes room once `goOn` is called. */
  spent(specimenId: number): Promise<void>
  /** Goes on to the next one if the one at hand is spent. */
  goOnIfSpent(): Promise<void>
  /** Goes on to the next one whatever became of the one at hand; after the last comes the first that was passed over. */
  goOn(): Promise<void>
  /**
   * null: the next capture belongs to no specimen. `again`: the person knows that it broke before. Rejects with Trouble
   * `not-found`, and `conflict` for one that broke or that a real press cannot break.
   */
  take(specimenId: number | null, again: boolean): Promise<void>
  /** Reads again after records changed; a breaking session that was opened begins with its first specimen. */
  refresh(): Promise<void>
}

export type QueueOptions = {
  /** False: captures belong to no specimen. */
  enabled: boolean
  /** Specimens of the demo study are broken too: on the virtual bench alone. */
  invented: boolean
}

/**
 * The order of work is that of the open breaking session, or else the natural order of the specimens' numbers; whatever broke
 * comes only when the person takes it again.
 */
export function createSpecimenQueue(
  archive: Pick<Archive, 'specimen' | 'pressQueue'>,
  { enabled, invented }: QueueOptions,
  onChange: () => void,
): SpecimenQueue {
  const order = createPressOrder(archive, invented)
  let current: SpecimenSummary | null = null
  let next: SpecimenSummary | null = null
  let queued: Awaited<ReturnType<typeof order.standing>> = { waiting: 0, session: null }
  let takenAgain = false
  let withoutSpecimen = !enabled
  let lastId: number | null = null
  /** Broken here, with the record still on its way to the disk. */
  const beingStored = new Set<number>()
  // Every change reads the archive, so changes take turns.
  let turn: Promise<unknown> = Promise.resolve()

  function inTurn<T>(change: () => Promise<T>): Promise<T> {
    const done = turn.then(change)
    // What fails is told to whoever asked for it; it keeps no later change from its turn.
    turn = done.catch(() => {})
    return done
  }

  function isSpent(): boolean {
    if (current === null) return false
    return beingStored.has(current.specimenId) || (current.timesBroken > 0 && !takenAgain)
  }

  const following = (afterId: number | null, notId: number | null) =>
    order.following(afterId, new Set([...beingStored, notId]))

  async function settle(specimen: SpecimenSummary | null) {
    current = specimen
    if (specimen !== null) lastId = specimen.specimenId
    next = enabled ? await following(lastId, specimen?.specimenId ?? null) : null
    queued = await order.standing()
    onChange()
  }

  async function advance() {
    if (!enabled) return
    withoutSpecimen = false
    takenAgain = false
    await settle(await following(lastId, current?.specimenId ?? null))
  }

  return {
    current: () => current,
    again: () => takenAgain,
    next: () => next,
    waiting: () => queued.waiting,
    session: () => (enabled ? queued.session : null),
    forCapture: () =>
      inTurn(async () => {
        if (isSpent()) await advance()
        return current?.specimenId ?? null
      }),
    broke(specimenId) {
      void inTurn(async () => {
        const broken = await specimenId
        if (broken !== null) beingStored.add(broken)
      })
    },
    spent: (specimenId) =>
      inTurn(async () => {
        beingStored.delete(specimenId)
        if (current?.specimenId !== specimenId) return
        takenAgain = false
        await settle((await archive.specimen(specimenId)).current)
      }),
    goOnIfSpent: () => inTurn(async () => void (isSpent() && (await advance()))),
    goOn: () => inTurn(advance),
    take: (specimenId, again) =>
      inTurn(async () => {
        const taken = specimenId === null ? null : (await archive.specimen(specimenId)).current
        if (taken !== null) refuseUnfit(taken, again, invented)
        withoutSpecimen = specimenId === null
        takenAgain = again
        await settle(taken)
      }),
    refresh: () =>
      inTurn(async () => {
        const before = queued.session?.breakingSessionId
        queued = await order.standing()
        const opened = queued.session?.breakingSessionId
        if (opened !== undefined && opened !== before && enabled) {
          withoutSpecimen = false
          takenAgain = false
          await settle(await following(null, null))
        } else if (current !== null) await settle((await archive.specimen(current.specimenId)).current)
        else await settle(withoutSpecimen ? null : await following(null, null))
      }),
  }
}

function refuseUnfit({ fields, timesBroken }: SpecimenSummary, again: boolean, invented: boolean): void {
  if (fields.demo && !invented)
    throw new Trouble(
      'conflict',
      `The specimen ${fields.number} is invented: no real press can break it.`,
      'Take a specimen of your own.',
    )
  if (timesBroken > 0 && !again)
    throw new Trouble(
      'conflict',
      `The specimen ${fields.number} broke already.`,
      'Take another, or say that it is to be broken again.',
    )
}
