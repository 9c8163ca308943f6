import type { Archive } from '#archive/archive.ts'
import { Trouble } from '#contract/errors.ts'
import { leftOut } from '#contract/keeping/unreadable.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import type { pullProcedures, SeriesStock } from '#contract/programme/pullProcedures.ts'
import { localDayOf } from '#domain/programme/calendar/calendarDay.ts'
import { studyPulls } from '#domain/programme/calendar/studyPulls.ts'
import { stockBySeries } from '#domain/programme/stock/studyStock.ts'
import { pullCalendar } from '#exchange/calendar/pullCalendar.ts'
import { pullEvents } from '#exchange/calendar/pullEvents.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Pulls: listed, decided, written as a calendar, and what is left on the shelf. */
export function pullHandlers({ archive, clock, tasks }: HandlerParts): HandlersOf<typeof pullProcedures> {
  const today = () => localDayOf(clock.instant())
  return {
    'pulls.list': async ({ studyId }) => {
      const sources = await archive.pullSources(studyId)
      const day = today()
      const filling = tasks.isRunning('demo')
      const pulls = filling ? [] : sources.rows.flatMap((source) => studyPulls(source, day))
      return { today: day, pulls: pulls.sort((a, b) => a.dueOn.localeCompare(b.dueOn)), filling, ...leftOut(sources) }
    },
    'pulls.blocks': ({ pulls }) => archive.pullBlocks(pulls),
    'pulls.stock': async ({ studyId }) => {
      const [source] = (await archive.pullSources(studyId)).rows
      if (source === undefined) return []
      const stock: SeriesStock[] = []
      for (const series of stockBySeries(source, await archive.seriesCounts(studyId), today())) {
        stock.push(series)
        // A bench that listens in the same thread gets its turn
        await new Promise((resolve) => setImmediate(resolve))
      }
      return stock
    },
    'pulls.decide': (made) => archive.addPullDecision({ ...made, recordedAt: clock.instant() }),
    'pulls.calendar': ({ studyId }) => calendarOfStudy(archive, studyId, clock.instant()),
  }
}

/**
 * The pulls of a study as a calendar file, written at an instant. Rejects with a Trouble where there is no such study, or nothing
 * to count its ages from yet.
 */
export async function calendarOfStudy(
  archive: Pick<Archive, 'pullSources' | 'chainIdentity'>,
  studyId: number,
  writtenAt: string,
): Promise<{ events: number; text: string }> {
  const [source] = (await archive.pullSources(studyId)).rows
  const pulls = source === undefined ? [] : studyPulls(source, localDayOf(writtenAt))
  const identity = await archive.chainIdentity()
  if (source === undefined || pulls.length === 0 || identity === null)
    throw new Trouble(
      'not-found',
      `Study ${studyId} has no pull with a date yet.`,
      'Glue its blocks, or give it the day on which it is to start.',
    )
  const events = pullEvents(pulls, identity.slice(0, 16))
  return { events: events.length, text: pullCalendar(source.study.fields.title, events, writtenAt) }
}
