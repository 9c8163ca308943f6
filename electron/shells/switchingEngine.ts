import { resolve } from 'node:path'
import { Trouble, troubleFrom } from '#contract/errors.ts'
import { type EventName, events, type PayloadOf } from '#contract/events.ts'
import type { ArchiveChoice, FilePurpose } from '#contract/keeping/archive.ts'
import { type Handlers, type ProcedureName, procedures } from '#contract/procedures.ts'
import type { Engine } from '#engine/core/engine.ts'
import { createRealEngine, type RealEngineOptions } from '#engine/createRealEngine.ts'
import { fileAskedFor } from './fileAskedFor.ts'
import { knownArchives, noteOpened, openedArchives, type UsualPlaces } from './knownArchives.ts'
import { startDemo } from './startDemo.ts'

type OpenEngine = Awaited<ReturnType<typeof createRealEngine>>

/** An archive, and whether it is opened as the demo. */
type Opening = { path: string; demo: boolean }

export type SwitchingOptions = {
  /** The archive to begin with: opened as the demo, or as a person's own. */
  archivePath: string
  demo: boolean
  /** Where the person's own archive and the demo lie when no other is named. */
  places: UsualPlaces
  /** Where it is remembered which archives were opened. */
  openedFile: string
  /** Where heads of chains are kept. */
  keptHeads?: string
  host: RealEngineOptions['host']['host']
  program: string
  /** Asks the person for a file, null: none was chosen. Absent: this host cannot. */
  chooseFile?(purpose: FilePurpose): Promise<string | null>
  /** Prints an HTML text as PDF. Absent: this host cannot. */
  printPdf?: RealEngineOptions['printPdf']
}

/** An engine whose archive a host can exchange for another, under the same handlers and subscriptions. */
export type SwitchingEngine = Pick<Engine, 'handlers' | 'subscribe'> & {
  /** The archive that is open. */
  path(): string
  /** Opens another archive in place of the one that is open. Rejects with a Trouble, and then that one stays open. */
  switchTo(choice: ArchiveChoice): Promise<void>
  /** Fills the demo and connects its virtual bench, where the demo is open; else nothing. */
  startDemo(): Promise<void>
  /** Ends a running capture, waits until all is on disk and closes the archive. */
  close(): Promise<void>
}

/** Opens the first archive. Rejects with a Trouble when it cannot be had. */
export async function createSwitchingEngine(options: SwitchingOptions): Promise<SwitchingEngine> {
  const { openedFile } = options
  const places = { ...options.places, ...(options.demo ? { demo: options.archivePath } : {}) }
  // The file of the demo is the demo, however it was named.
  const isDemo = resolve(options.archivePath) === resolve(places.demo)
  let opened: Opening = { path: options.archivePath, demo: isDemo }
  let ownPath = isDemo ? places.own : options.archivePath
  let engine = await openEngine(options, opened)
  let turn: Promise<void> = Promise.resolve()
  const listeners = new Map<EventName, Set<(payload: never) => void>>()
  listenTo(engine)
  remember()

  function tell<N extends EventName>(name: N, payload: PayloadOf<N>): void {
    for (const listener of listeners.get(name) ?? []) listener(payload as never)
  }

  /** Events of an engine that was left go nowhere. */
  function listenTo(heard: OpenEngine): void {
    for (const name of Object.keys(events) as EventName[])
      heard.subscribe(name, (payload) => heard === engine && tell(name, payload))
  }

  function remember(): void {
    noteOpened(openedFile, { path: resolve(opened.path), openedAt: new Date().toISOString() })
  }

  function openingOf(choice: ArchiveChoice): Opening {
    if (choice.kind === 'demo') return { path: places.demo, demo: true }
    if (choice.kind === 'own') return { path: ownPath, demo: false }
    const path = fileAskedFor(choice.path, choice.make)
    return { path, demo: path === resolve(places.demo) }
  }

  /** The other archive is open and ready before this one is let go, so that a failure leaves all as it is. */
  async function exchange(choice: ArchiveChoice): Promise<void> {
    const wanted = openingOf(choice)
    if (resolve(wanted.path) === resolve(opened.path)) return wanted.demo ? startDemo(engine) : undefined
    refuseInUse(engine)
    const next = await openEngine(options, wanted)
    try {
      if (wanted.demo) await startDemo(next)
      // Filling takes some seconds, in which a load may have begun.
      refuseInUse(engine)
    } catch (thrown) {
      await closeEngine(next)
      throw thrown
    }
    const left = engine
    engine = next
    opened = wanted
    if (!wanted.demo) ownPath = wanted.path
    listenTo(next)
    // Before anything of the other one is told, so that no page takes it for what it shows.
    tell('archive.switched', {})
    remember()
    // The other one is open: what goes wrong with this one is told, and does not make it the one that is open again.
    await closeEngine(left).catch((thrown: unknown) => tell('trouble', troubleFrom(thrown)))
  }

  function switchTo(choice: ArchiveChoice): Promise<void> {
    const switched = turn.then(() => exchange(choice))
    turn = switched.catch(() => {})
    return switched
  }

  const handlers = Object.fromEntries(
    (Object.keys(procedures) as ProcedureName[]).map((name) => [
      name,
      (input: never) => (engine.handlers[name] as (given: never) => Promise<unknown>)(input),
    ]),
  ) as unknown as Handlers
  handlers['archive.switch'] = async ({ to }) => {
    await switchTo(to)
    return {}
  }
  handlers['archive.known'] = async () => knownArchives(openedArchives(openedFile), places, opened.path)
  const { chooseFile } = options
  if (chooseFile !== undefined)
    handlers['archive.choose'] = async ({ purpose }) => ({ path: await chooseFile(purpose) })

  return {
    handlers,
    subscribe<N extends EventName>(name: N, listener: (payload: PayloadOf<N>) => void) {
      const heard = listeners.get(name) ?? new Set()
      listeners.set(name, heard.add(listener as (payload: never) => void))
      return () => void heard.delete(listener as (payload: never) => void)
    },
    path: () => opened.path,
    switchTo,
    startDemo: async () => (opened.demo ? startDemo(engine) : undefined),
    async close() {
      await turn
      await closeEngine(engine)
    },
  }
}

function openEngine(options: SwitchingOptions, { path, demo }: Opening): Promise<OpenEngine> {
  const { program, keptHeads, chooseFile, printPdf } = options
  const capabilities: RealEngineOptions['host']['capabilities'] = ['switch-archive']
  if (chooseFile !== undefined) capabilities.push('choose-file')
  if (printPdf !== undefined) capabilities.push('print-to-pdf')
  return createRealEngine({
    ...{ archivePath: path, demo, program, host: { host: options.host, capabilities } },
    ...(keptHeads === undefined ? {} : { keptHeads }),
    ...(printPdf === undefined ? {} : { printPdf }),
  })
}

function refuseInUse(engine: OpenEngine): void {
  const { phase, busyWith } = engine.bench.state()
  if (phase === 'loading' || busyWith !== null)
    throw new Trouble(
      'conflict',
      'Another archive cannot be opened while the bench is in use.',
      'Take the load off or finish the calibration, then try again.',
    )
}

async function closeEngine(engine: OpenEngine): Promise<void> {
  await engine.close()
  await engine.archive.close()
}
