import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import type { Plugin } from 'vite'
import { createVitest, type TestModule, type Vitest } from 'vitest/node'
import { projectFolder } from '#tests/architecture/projectFiles.ts'
import { dependentsOf } from './dependents.ts'
import { withLoopGuards } from './loopGuards.ts'
import { type Mutation, mutated, mutationsOf } from './mutations.ts'

/** What became of the mutants of one file. */
export type Trial = {
  readonly source: string
  readonly caught: readonly Mutation[]
  readonly survived: readonly Mutation[]
}

const query = /\?mutant=(\d+)$/
/** Only these may import what is mutated, and only their loops may run for ever. */
const copiedFolders = ['electron/domain', 'tests/domain', 'tests/soak/mutants'].map(
  (folder) => `${resolve(projectFolder, folder)}/`,
)
const isCopied = (path: string): boolean =>
  path.endsWith('.ts') && copiedFolders.some((folder) => path.startsWith(folder))
/** With a mutant a loop may turn so many times as often as without one, and so often in any case. */
const mostTimesTurns = 10
const turnsInAnyCase = 50_000

/**
 * Serves copy n of the spec and of every module through which it imports the mutated one, that one with its n-th mutation; and
 * copy 0, as it stands, of the rest, which needs to be loaded but once.
 */
function servedMutants(sourcePath: string, specPath: string, text: string, mutations: readonly Mutation[]): Plugin {
  const dependents = dependentsOf(sourcePath, specPath, isCopied)
  const asTheyStand = new Map<string, string>()
  const firstLoops = new Map<string, number>()
  let loopsSoFar = 0
  /** The loops of a file have the same numbers in every copy. */
  function guarded(path: string, ofCopy: string): string {
    const known = firstLoops.get(path)
    const first = known ?? loopsSoFar
    const { guarded, loops } = withLoopGuards(ofCopy, first)
    if (known === undefined) {
      firstLoops.set(path, first)
      loopsSoFar += loops
    }
    return guarded
  }
  function asItStands(path: string): string {
    const known = asTheyStand.get(path) ?? guarded(path, readFileSync(path, 'utf8'))
    asTheyStand.set(path, known)
    return known
  }
  return {
    name: 'serve-mutants',
    enforce: 'pre',
    async resolveId(id, importer) {
      const mutant = importer?.match(query)?.[1]
      if (mutant === undefined || query.test(id)) return null
      const resolved = await this.resolve(id, importer, { skipSelf: true })
      if (resolved === null || !isCopied(resolved.id)) return resolved
      return { ...resolved, id: `${resolved.id}?mutant=${dependents.has(resolved.id) ? mutant : 0}` }
    },
    load(id) {
      const mutant = id.match(query)?.[1]
      if (mutant === undefined) return null
      const path = id.replace(query, '')
      const mutation = path === sourcePath ? mutations[Number(mutant) - 1] : undefined
      return mutation === undefined ? asItStands(path) : guarded(path, mutated(text, mutation))
    },
  }
}

function openVitest(serve: Plugin): Promise<Vitest> {
  return createVitest(
    {
      root: projectFolder,
      config: false,
      watch: false,
      // A thread stays in the time zone of its process, whatever a spec sets.
      pool: 'forks',
      isolate: false,
      // A copy is known by its address alone, which says nothing of what is mutated in it.
      fsModuleCache: false,
      maxWorkers: 1,
      reporters: [{}],
      setupFiles: ['tests/failOnConsole.ts', 'tests/soak/mutants/watchedRun.ts'],
      testTimeout: 600_000,
    },
    { plugins: [serve], logLevel: 'silent' },
  )
}

const passes = (module: TestModule): boolean => module.state() === 'passed'
const copyOf = (module: TestModule): number => Number(module.moduleId.match(query)?.[1])

async function runCopies(
  vitest: Vitest,
  specPath: string,
  copies: readonly number[],
  mostLoopTurns: { byLoop: readonly number[]; ofOthers: number },
): Promise<readonly TestModule[]> {
  const project = vitest.getRootProject()
  project.provide('mostLoopTurns', mostLoopTurns)
  const specifications = copies.map((copy) => project.createSpecification(`${specPath}?mutant=${copy}`))
  const { testModules } = await vitest.runTestSpecifications(specifications)
  return testModules.filter((module) => copies.includes(copyOf(module)))
}

/**
 * Runs one spec against every mutant of one source file, all in one process: each mutant is a copy of the spec and of the
 * modules between the two under an address of its own, and the file itself is never written. Paths are relative to the project's folder.
 *
 * Without a spec all survive. Throws Error where the spec fails without any mutant.
 */
export async function tryMutants(source: string, spec: string | null): Promise<Trial> {
  const sourcePath = resolve(projectFolder, source)
  const text = readFileSync(sourcePath, 'utf8')
  const mutations = mutationsOf(text)
  if (spec === null || mutations.length === 0) return { source, caught: [], survived: mutations }
  const specPath = resolve(projectFolder, spec)
  const vitest = await openVitest(servedMutants(sourcePath, specPath, text, mutations))
  try {
    const [asItStands] = await runCopies(vitest, specPath, [0], { byLoop: [], ofOthers: Number.POSITIVE_INFINITY })
    if (asItStands === undefined || !passes(asItStands))
      throw new Error(`${spec} fails as it stands, so that mutants of ${source} say nothing.`)
    const turns = [...asItStands.children.allTests()].map((test) => test.meta().loopTurns ?? [])
    const loops = Math.max(0, ...turns.map(({ length }) => length))
    const byLoop = Array.from(
      { length: loops },
      (_, loop) => mostTimesTurns * Math.max(0, ...turns.map((inTest) => inTest[loop] ?? 0)) + turnsInAnyCase,
    )
    const copies = mutations.map((_, index) => index + 1)
    const modules = await runCopies(vitest, specPath, copies, { byLoop, ofOthers: turnsInAnyCase })
    if (modules.length !== mutations.length) throw new Error(`${spec} did not run with every mutant of ${source}.`)
    const passed = new Set(modules.filter(passes).map(copyOf))
    return {
      source,
      caught: mutations.filter((_, index) => !passed.has(index + 1)),
      survived: mutations.filter((_, index) => passed.has(index + 1)),
    }
  } finally {
    await vitest.close()
  }
}
