import { folded } from '#domain/text/naturalOrder.ts'

/** Something that can be chosen; `detail`: what else tells it from others; `question`: what is doubtful about choosing it. */
export type ComboboxOption = {
  readonly value: string
  readonly detail?: string | undefined
  readonly question?: string | null
}

/** No person reads a longer list: it says that there are more, and typing on shortens it. */
export const mostShown = 100

/** Options that hold every word of what is typed, those that begin with it first; all where nothing is typed. */
export function optionsThatFit<Option extends ComboboxOption>(options: readonly Option[], typed: string): Option[] {
  const words = folded(typed)
    .split(' ')
    .filter((word) => word !== '')
  if (words.length === 0) return [...options]
  const fits = options.filter(({ value, detail }) => {
    const text = folded(`${value} ${detail ?? ''}`)
    return words.every((word) => text.includes(word))
  })
  const begins = (option: Option) => folded(option.value).startsWith(words.join(' '))
  return [...fits.filter(begins), ...fits.filter((option) => !begins(option))]
}

/** The place of the marked option after a key; -1: none is marked. From either end it goes round through none. */
export function markedAfterKey(key: 'ArrowDown' | 'ArrowUp', marked: number, count: number): number {
  const step = key === 'ArrowDown' ? 1 : -1
  const next = marked + step
  if (next < -1) return count - 1
  return next >= count ? -1 : next
}

/** What is asked about a text: what is doubtful about the option that it is, or `newWords` where it is none; '' where nothing is typed. */
export function questionAbout(options: readonly ComboboxOption[], typed: string, newWords: string): string {
  if (typed.trim() === '') return ''
  const taken = options.find(({ value }) => folded(value) === folded(typed))
  return taken === undefined ? newWords : (taken.question ?? '')
}

/** Whether what is typed is one of the options, however it is written. */
export function isAmong(options: readonly ComboboxOption[], typed: string): boolean {
  return options.some(({ value }) => folded(value) === folded(typed))
}
