import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { cruise, type ICruiseResult } from 'dependency-cruiser'
import extractDepcruiseOptions from 'dependency-cruiser/config-utl/extract-depcruise-options'
import { projectFolder } from './projectFiles.ts'

export type TreeReport = {
  /** Paths of our own modules that were read. */
  modules: string[]
  /** One text per fault, "rule: from -> to". */
  violations: string[]
}

/** Reads a tree laid out like ours with the rules of .dependency-cruiser.mjs. */
export async function cruiseTree(baseDir: string): Promise<TreeReport> {
  const options = await extractDepcruiseOptions(join(projectFolder, '.dependency-cruiser.mjs'))
  const folders = ['electron', 'renderer'].filter((folder) => existsSync(join(baseDir, folder)))
  const { modules, summary } = (await cruise(folders, { ...options, baseDir })).output as ICruiseResult
  return {
    modules: modules.map((module) => module.source).filter((path) => /^(electron|renderer)\//.test(path)),
    violations: summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`),
  }
}
