// Held by tests/browser/specimens/importPage.spec.ts.
import { useCallback, useRef, useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { InputOf } from '#contract/procedures.ts'
import type { ImportMapping } from '#contract/specimens/importMapping.ts'
import { type ImportAnswer, refuseLargeTable } from '#contract/specimens/importProcedures.ts'
import type { SheetView } from '#contract/specimens/sheetView.ts'
import type { Progress } from '#contract/tasks.ts'
import { useHost } from '../../../host/hostContext.ts'
import { useEvent } from '../../../host/useEvent.ts'
import { type ReadFile, readFile } from '../../../parts/files/readFile.ts'
import { readyMapping } from './mappingDraft.ts'

/** What of a sheet is said, and not found from the file. */
export type Said = Omit<InputOf<'imports.look'>, 'name' | 'content'>

const nothingSaid: Said = { sheet: null, headerRow: null, delimiter: null, encoding: null }
export type Doing = 'looking' | 'trying' | 'importing'

/** A file of past results in the hands of the page: looked at, tried, brought in. */
export type ImportFile = {
  name: string | null
  view: SheetView | null
  said: Said
  mapping: ImportMapping | null
  answer: ImportAnswer | null
  doing: Doing | null
  progress: Progress | null
  error: TroubleMessage | null
  open(file: File): Promise<void>
  /** Looks at the file again, otherwise; `mapping` null: the one that is proposed then. */
  look(said: Partial<Said>, mapping: ImportMapping | null): Promise<void>
  setMapping(mapping: ImportMapping): void
  attempt(): Promise<void>
  bringIn(by: string): Promise<void>
  stop(): void
  close(): void
}

/** Holds a file until another is opened; its bytes go to the program with every question. */
export function useImportFile(): ImportFile {
  const { client } = useHost()
  const [held, setHeld] = useState<ReadFile | null>(null)
  const [said, setSaid] = useState(nothingSaid)
  const [view, setView] = useState<SheetView | null>(null)
  const [mapping, setMapping] = useState<ImportMapping | null>(null)
  const [answer, setAnswer] = useState<ImportAnswer | null>(null)
  const [doing, setDoing] = useState<Doing | null>(null)
  const [progress, setProgress] = useState<Progress | null>(null)
  const [error, setError] = useState<TroubleMessage | null>(null)
  useEvent('task.progress', (next) => next.task === 'import' && setProgress(next))

  const busy = useRef(false)
  const during = useCallback(async (what: Doing, work: () => Promise<void>) => {
    // One thing after the other: what is under way goes on until it is done or stopped
    if (busy.current) return
    busy.current = true
    setDoing(what)
    setProgress(null)
    setError(null)
    try {
      await work()
    } catch (thrown) {
      setError(troubleFrom(thrown))
    }
    busy.current = false
    setDoing(null)
  }, [])

  const lookAt = async (file: ReadFile, next: Said, given: ImportMapping | null) => {
    const seen = await client.call('imports.look', { ...file, ...next })
    setSaid(next)
    setView(seen)
    setMapping(given ?? seen.proposed)
    setAnswer(null)
  }
  const close = () => {
    setHeld(null)
    setView(null)
    setMapping(null)
    setAnswer(null)
    setSaid(nothingSaid)
  }
  const ask = (what: Doing, work: (file: ReadFile, said: ImportMapping) => Promise<ImportAnswer>) =>
    during(what, async () => {
      if (held !== null && mapping !== null) setAnswer(await work(held, mapping))
    })
  return {
    ...{ name: held?.name ?? null, view, said, mapping, answer, doing, progress, error },
    open: (file) =>
      during('looking', async () => {
        close()
        refuseLargeTable(file.name, file.size)
        const opened = await readFile(file)
        setHeld(opened)
        await lookAt(opened, nothingSaid, null)
      }),
    look: (change, given) =>
      during('looking', async () => {
        if (held !== null) await lookAt(held, { ...said, ...change }, given)
      }),
    setMapping: (next) => {
      setMapping(next)
      setAnswer(null)
    },
    attempt: () => ask('trying', (file, said) => client.call('imports.try', { ...file, mapping: readyMapping(said) })),
    bringIn: (by) =>
      ask('importing', (file, said) => client.call('imports.run', { ...file, mapping: readyMapping(said), by })),
    stop: () => void client.call('task.cancel', { task: 'import' }).catch(() => {}),
    close,
  }
}
