// Held by tests/browser/keyboardRun.spec.ts.
import { useEffect, useRef } from 'react'

/** Whether single keys act at all: speech input and some aids need them off. */
const storageKey = 'breakledger.single-keys'
export const singleKeys = {
  on: () => localStorage.getItem(storageKey) !== 'off',
  set: (on: boolean) => localStorage.setItem(storageKey, on ? 'on' : 'off'),
}

/**
 * True when keys belong to something else: a text being typed, a form being filled, an open dialog, a control that uses them
 * itself. A key that is held down acts once.
 */
export function keyIsTaken(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.isComposing || event.ctrlKey || event.metaKey || event.altKey) return true
  if (event.repeat && !/^Arrow|^Page|^[+−-]$/.test(event.key)) return true
  const target = event.target
  if (!(target instanceof Element)) return false
  // A heading in it has the focus only where nothing is typed
  if (target.closest('form') !== null && target instanceof HTMLElement && target.tabIndex >= 0) return true
  if (target.closest('dialog, textarea, select, [contenteditable]') !== null) return true
  if (document.querySelector('dialog[open]') !== null) return true
  const input = target.closest('input')
  if (input !== null && input.type !== 'radio' && input.type !== 'checkbox') return true
  const usesArrows = input !== null || target.closest('[data-own-keys]') !== null
  if (usesArrows && /^Arrow|^Home$|^End$|^Page/.test(event.key)) return true
  const usesEnter = target.closest('button, a, summary, tr[data-index]') !== null
  return usesEnter && (event.key === 'Enter' || event.key === ' ')
}

/**
 * Hears single keys for as long as the component is there; `act` returns true for a key that it used. A page hears them on
 * the document and so before the frame, which hears them on the window: a page may use a key that elsewhere leads away.
 */
export function useSingleKeys(act: (key: string) => boolean, heardOn: Document | Window = document): void {
  const latest = useRef(act)
  latest.current = act
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      if (!singleKeys.on() || keyIsTaken(event)) return
      if (latest.current(event.key)) event.preventDefault()
    }
    heardOn.addEventListener('keydown', listen as EventListener)
    return () => heardOn.removeEventListener('keydown', listen as EventListener)
  }, [heardOn])
}
