import type { TestProject } from 'vitest/node'
import { buildIfNeeded } from '#shells/start/build.ts'

/** Tests run from source; the threads that they start are built files, which must be of the same source. */
export default async function buildThreads(project: TestProject): Promise<void> {
  await buildIfNeeded('threads')
  project.onTestsRerun(async () => {
    await buildIfNeeded('threads')
  })
}
