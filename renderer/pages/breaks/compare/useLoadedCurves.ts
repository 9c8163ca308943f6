import { useEffect, useRef, useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import { useHost } from '../../../host/hostContext.ts'
import { type LoadedCurve, loadCurve, pointsEach } from './loadedCurves.ts'

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
 * others come and go. `version`: another number fetches all anew.
 */
export function useLoadedCurves(breakIds: readonly number[], version: number): LoadedCurves {
  const { client } = useHost()
  const [curves, setCurves] = useState<ReadonlyMap<number, LoadedCurve>>(new Map())
  const [error, setError] = useState<TroubleMessage | null>(null)
  const [stopped, setStopped] = useState(false)
  const kept = useRef({ version, curves: new Map<number, LoadedCurve>() })
  const wanted = breakIds.join(',')

  useEffect(() => {
    if (stopped || wanted === '') return
    let current = true
    const ids = wanted.split(',').map(Number)
    if (kept.current.version !== version) kept.current = { version, curves: new Map() }
    const there = kept.current.curves
    let showing: ReturnType<typeof setTimeout> | undefined
    function show(): void {
      clearTimeout(showing)
      showing = undefined
      setCurves(new Map(there))
    }
    async function fetchAll(): Promise<void> {
      setError(null)
      for (const breakId of ids) {
        if (there.has(breakId)) continue
        try {
          const loaded = await loadCurve(client, breakId, pointsEach(ids.length))
          if (!current) return
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
  }, [client, wanted, version, stopped])

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
