// Held by tests/browser/findings/findingsPage.spec.ts.
import { type FigureOrigin, figureOrigin } from '#words/keeping/figureOrigin.ts'
import { useHost, useStore } from '../../host/hostContext.ts'

/**
 * Words what stands below a figure that is saved now: the archive, the day, what it is about, and how much of it nobody measured:
 * all of it where the archive is a demo.
 */
export function useFigureOrigin(): (about: string, simulated?: FigureOrigin['simulated']) => string[] {
  const info = useStore(useHost().info)
  return (about, simulated = 'none') =>
    figureOrigin({
      about,
      simulated: info?.demo === true ? 'all' : simulated,
      archive: info?.archive.path.split(/[\\/]/).at(-1) ?? null,
      instant: new Date().toISOString(),
    })
}
