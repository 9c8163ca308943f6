// Held by tests/browser/everyScreen.spec.ts.
import type uPlot from 'uplot'

/** Keeps a plot as large as its host, and does what comes `after` each change. Returns what ends it. */
export function fitToHost(plot: uPlot, host: HTMLElement, after: () => void = () => {}): () => void {
  const resizing = new ResizeObserver(() => {
    const { clientWidth: width, clientHeight: height } = host
    if (width > 0 && height > 0) plot.setSize({ width, height })
    after()
  })
  resizing.observe(host)
  return () => resizing.disconnect()
}
