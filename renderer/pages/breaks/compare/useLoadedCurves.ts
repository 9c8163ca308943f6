// Held by tests/browser/breaks/compareFetching.spec.ts.
import { useEffect, useRef, useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import { topicsOf } from '#contract/topics.ts'
import { useHost } from '../../../host/hostContext.ts'
import { type LoadedCurve, loadCurve, pointsEach, withNewRecord } from './loadedCurves.ts'

export type LoadedCurves = {
  curves: ReadonlyMap<number, LoadedCurve>
  /** How many of those wanted are there. */
  done: number
  pending: boolean
  stopped: boolean
  error: TroubleMessage | null
  stop(): void
  resume(): void
}

/** Curves come faster than a picture of all of them is worth painting: those that came meanwhile are shown together. */
const showEveryMs = 150

/**
 * The curves of breaks, fetched one after another; those that are there can be drawn already. One that was fetched stays while
 * others come and go, and is fetched again when it was written.
 */
export function useLoadedCurves(breakIds: readonly number[]): LoadedCurves {
  const { client, changes } = useHost()
  const [curves, setCurves] = useState<ReadonlyMap<number, LoadedCurve>>(new Map())
  const [error, setError] = useState<TroubleMessage | null>(null)
  const [stopped, setStopped] = useState(false)
  const [changed, setChanged] = useState(0)
  const kept = useRef(new Map<number, LoadedCurve>())
  const outdated = useRef(new Map<number, 'record' | 'curve'>())
  const followed = useRef(new Map<number, () => void>())
  const wanted = breakIds.join(',')

  // Followed for as long as the page stands, for one that was taken out may come back
  useEffect(() => {
    for (const breakId of idsIn(wanted)) {
      if (followed.current.has(breakId)) continue
      const endRecord = changes.follow(topicsOf('result', [breakId]), () => {
        if (!outdated.current.has(breakId)) outdated.current.set(breakId, 'record')
        setChanged((before) => before + 1)
      })
      const endCurve = changes.follow(topicsOf('curve', [breakId]), () => {
        outdated.current.set(breakId, 'curve')
        setChanged((before) => before + 1)
      })
      followed.current.set(breakId, () => {
        endRecord()
        endCurve()
      })
    }
  }, [changes, wanted])
  useEffect(
    () => () => {
      for (const end of followed.current.values()) end()
      followed.current.clear()
    },
    [],
  )

  // Fetched anew where something changed
  useEffect(() => {
    if (stopped || wanted === '') return
    let current = true
    const ids = idsIn(wanted)
    const there = kept.current
    let showing: ReturnType<typeof setTimeout> | undefined
    function show(): void {
      clearTimeout(showing)
      showing = undefined
      setCurves(new Map(there))
    }
    async function fetchAll(): Promise<void> {
      setError(null)
      for (const breakId of ids) {
        const before = there.get(breakId)
        const anew = outdated.current.get(breakId)
        if (before !== undefined && anew === undefined) continue
        try {
          const loaded =
            before !== undefined && anew === 'record'
              ? await withNewRecord(client, before)
              : await loadCurve(client, breakId, pointsEach(ids.length))
          if (!current) return
          outdated.current.delete(breakId)
          there.set(breakId, loaded)
          showing ??= setTimeout(show, showEveryMs)
        } catch (thrown) {
          if (!current) return
          setError(troubleFrom(thrown))
        }
      }
      if (showing !== undefined) show()
    }
    void fetchAll()
    return () => {
      current = false
      // What has come stays in sight when fetching is stopped.
      if (showing !== undefined) show()
    }
  }, [client, wanted, changed, stopped])

  const done = breakIds.filter((id) => curves.has(id)).length
  return {
    curves,
    done,
    pending: !stopped && error === null && done < breakIds.length,
    stopped,
    error,
    stop: () => setStopped(true),
    resume: () => setStopped(false),
  }
}

function idsIn(wanted: string): number[] {
  return wanted === '' ? [] : wanted.split(',').map(Number)
}
