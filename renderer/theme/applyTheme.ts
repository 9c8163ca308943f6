// Held by tests/browser/everyScreen.spec.ts.
import type { Preferences } from '#contract/settings/settings.ts'

/** Puts the chosen theme on the page and, for `system`, follows the system; the returned function ends that. */
export function applyTheme(choice: Preferences['theme']): () => void {
  const dark = matchMedia('(prefers-color-scheme: dark)')
  const apply = () => {
    const theme = choice === 'system' ? (dark.matches ? 'dark' : 'light') : choice
    document.documentElement.dataset.theme = theme
  }
  apply()
  if (choice !== 'system') return () => {}
  dark.addEventListener('change', apply)
  return () => dark.removeEventListener('change', apply)
}
