import { buildIfNeeded } from '#shells/start/build.ts'

/**
 * Long checks that the usual test run keeps a small share of: npm run soak -- NAME [options]. Each module exports
 * `soak(words)`, which prints what it measured and resolves with false when a check did not hold.
 */
const soaks: Record<string, () => Promise<{ soak(words: readonly string[]): Promise<boolean> }>> = {
  archiveCrash: () => import('./archiveCrash.ts'),
  bitFlips: () => import('./bitFlips.ts'),
  kill: () => import('./kill.ts'),
  capture: () => import('./capture.ts'),
  coverage: () => import('./coverage.ts'),
  detector: () => import('./detector.ts'),
  events: () => import('./events.ts'),
  faces: () => import('./faces.ts'),
  hostileFiles: () => import('./hostileFiles.ts'),
  hostileSocket: () => import('./hostileSocket.ts'),
  labels: () => import('./labels.ts'),
  mutants: () => import('./mutants.ts'),
  oddDevices: () => import('./oddDevices/oddDevices.ts'),
  programme: () => import('./programme.ts'),
  reevaluation: () => import('./reevaluation.ts'),
  tamper: () => import('./tamper/tamper.ts'),
}

const [wanted, ...words] = process.argv.slice(2)
const load = wanted === undefined ? undefined : soaks[wanted]
if (load === undefined) {
  console.error(`Usage: npm run soak -- NAME\nNames: ${Object.keys(soaks).join(', ')}`)
  process.exitCode = 2
} else {
  await buildIfNeeded('threads')
  const { soak } = await load()
  process.exitCode = (await soak(words)) ? 0 : 1
}
