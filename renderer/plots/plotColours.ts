// Held by tests/browser/everyScreen.spec.ts.
/** The colours that a canvas draws with, read from the theme. */
export type PlotColours = {
  ink: string
  quiet: string
  grid: string
  curve: string
  marker: string
  warning: string
  alarm: string
  ground: string
  font: string
}

/** Reads the theme in force from the style of an element; to be asked again when the theme changes. */
export function readPlotColours(element: Element): PlotColours {
  const style = getComputedStyle(element)
  const value = (name: string) => style.getPropertyValue(name).trim()
  return {
    ink: value('--ink'),
    quiet: value('--ink-quiet'),
    grid: value('--line'),
    curve: value('--accent'),
    marker: value('--ink'),
    warning: value('--warning'),
    alarm: value('--alarm'),
    ground: value('--paper'),
    font: `${style.getPropertyValue('--plot-font-size').trim() || '13px'} ${style.fontFamily}`,
  }
}

/** Calls back whenever the theme attribute of the page changes; the returned function ends it. */
export function onThemeChange(call: () => void): () => void {
  const observer = new MutationObserver(call)
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] })
  return () => observer.disconnect()
}
