// Held by tests/browser/breaks/selectBreaks.spec.ts.
import { useState } from 'react'

const kept = new Map<string, unknown>()

/**
 * A state that is still there when the person comes back to the page, by a name that no other uses for something else. `given`:
 * what comes before that, where it is not null.
 */
export function useKept<T>(name: string, first: T, given: () => T | null = () => null): [T, (next: T) => void] {
  const [value, setValue] = useState<T>(() => given() ?? (kept.has(name) ? (kept.get(name) as T) : first))
  return [
    value,
    (next) => {
      kept.set(name, next)
      setValue(next)
    },
  ]
}
