// Held by tests/browser/longList.spec.ts.
import { useCallback, useEffect, useRef, useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { InputOf, OutputOf } from '#contract/procedures.ts'
import { topicsRead } from '../../host/changes.ts'
import { coalesced } from '../../host/coalesced.ts'
import { useHost } from '../../host/hostContext.ts'
import { pagesOfRows } from '../../widgets/tables/virtualRows.ts'

type ListName = 'specimens.list' | 'breaks.list' | 'reevaluations.changes'
type RowOf<N extends ListName> = OutputOf<N>['rows'][number]
type ViewOf<N extends ListName> = Omit<InputOf<N>, 'offset' | 'limit'>
export type ListView = ViewOf<'breaks.list'>

export type PagedList<N extends ListName> = {
  total: number
  /** The page that came last, with whatever the answer says beside its rows; null until one has come. */
  newest: OutputOf<N> | null
  pending: boolean
  error: TroubleMessage | null
  rowAt(index: number): RowOf<N> | undefined
  /** Says which rows are in sight, so that their pages are fetched. */
  onSight(first: number, last: number): void
}

const pageSize = 100

/** A list fetched page by page as it comes in sight; what is shown stays until its new version is there. */
export function usePagedList<N extends ListName>(name: N, view: ViewOf<N>): PagedList<N> {
  const { client, changes } = useHost()
  const question = JSON.stringify(view)
  const pages = useRef(new Map<number, readonly RowOf<N>[]>())
  const asked = useRef(new Set<number>())
  const turn = useRef(0)
  const sight = useRef({ first: 0, last: 1 })
  const [shown, setShown] = useState({
    newest: null as OutputOf<N> | null,
    pending: true,
    error: null as TroubleMessage | null,
    arrivals: 0,
  })

  const fetchSight = useCallback(async () => {
    const fetched: Promise<void>[] = []
    const mine = turn.current
    const { first, last } = sight.current
    for (const offset of pagesOfRows(first, Math.max(last, first + 1), pageSize)) {
      if (asked.current.has(offset)) continue
      asked.current.add(offset)
      const input = { ...(JSON.parse(question) as ViewOf<N>), offset, limit: pageSize } as InputOf<N>
      const fetching = client.call(name, input).then(
        (answer) => {
          if (mine !== turn.current) return
          pages.current.set(offset, answer.rows as RowOf<N>[])
          setShown((before) => ({ newest: answer, pending: false, error: null, arrivals: before.arrivals + 1 }))
        },
        (thrown: unknown) => {
          if (mine !== turn.current) return
          asked.current.delete(offset)
          setShown((before) => ({ ...before, pending: false, error: troubleFrom(thrown) }))
        },
      )
      fetched.push(fetching)
    }
    await Promise.all(fetched)
  }, [client, name, question])

  // Another question, or something written that it reads: everything is asked again
  useEffect(() => {
    let wanted = true
    const fetchAnew = coalesced(async () => {
      if (!wanted) return
      turn.current++
      asked.current.clear()
      // Rows of the list before stay in sight until the new ones come, page by page.
      setShown((before) => ({ ...before, pending: true }))
      await fetchSight()
    })
    const end = changes.follow(topicsRead(name, JSON.parse(question)), fetchAnew)
    fetchAnew()
    return () => {
      wanted = false
      end()
    }
  }, [fetchSight, changes, name, question])

  const previousQuestion = useRef(question)
  if (previousQuestion.current !== question) {
    previousQuestion.current = question
    pages.current.clear()
  }

  const rowAt = (index: number) => pages.current.get(Math.floor(index / pageSize) * pageSize)?.[index % pageSize]
  const onSight = useCallback(
    (first: number, last: number) => {
      sight.current = { first, last }
      void fetchSight()
    },
    [fetchSight],
  )
  const { newest, pending, error } = shown
  return { total: newest?.total ?? 0, newest, pending, error, rowAt, onSight }
}
