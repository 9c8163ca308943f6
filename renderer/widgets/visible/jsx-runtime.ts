import { jsx as element, jsxs as elements, Fragment } from 'react/jsx-runtime'
import { visibleText } from '#words/visibleText.ts'

/**
 * Stands in for React's own `react/jsx-runtime` when the page is built (vite.config.ts): every text that an element shows or
 * is named by passes through `visibleText`. Numbers, notes and lines come from files, devices and other people, and no page
 * has to think of it. What is typed into a field stays as it is.
 */
export { Fragment }

type Make = typeof element

/** An element with one child, its texts made visible. */
export const jsx: Make = (type, props, key) => element(type, shown(type, props), key)

/** An element with several children, their texts made visible. */
export const jsxs: Make = (type, props, key) => elements(type, shown(type, props), key)

/** Attributes that a person reads or hears. */
const spokenAttributes = ['title', 'alt', 'label', 'placeholder', 'aria-label', 'aria-description', 'aria-valuetext']

/** A component hands its texts on to elements; only what the page is made of shows any. */
function shown(type: unknown, props: unknown): object {
  const given = props as Record<string, unknown>
  if (typeof type !== 'string' && type !== Fragment) return given
  const changed: Record<string, unknown> = {}
  for (const name of ['children', ...spokenAttributes]) {
    const value = visible(given[name])
    if (value !== given[name]) changed[name] = value
  }
  return Object.keys(changed).length === 0 ? given : { ...given, ...changed }
}

/** The same value where there is nothing to make visible, so that nothing is copied for it. */
function visible(value: unknown): unknown {
  if (typeof value === 'string') return visibleText(value)
  if (!Array.isArray(value)) return value
  const parts = value.map(visible)
  return parts.some((part, index) => part !== value[index]) ? parts : value
}
