// Held by tests/browser/programme/duePage.spec.ts.
import { useEffect, useRef } from 'react'
import { keyIsTaken, singleKeys } from '../routing/singleKeys.ts'
import { createScanReader } from './scanReader.ts'

/** A key that is given on was heard here already. */
const givenOn = new WeakSet<Event>()

/** Hears what a scanner types while no field has the focus. */
export function useScans(onScan: (text: string) => void): void {
  const latest = useRef(onScan)
  latest.current = onScan
  useEffect(() => {
    let turn = Promise.resolve()
    const reader = createScanReader({
      later(act, ms) {
        const timer = setTimeout(act, ms)
        return () => clearTimeout(timer)
      },
      onScan: (text) => latest.current(text),
      // Each in a turn of its own, in which the page takes in the key before; all come before the key that follows
      replay: (key) => {
        turn = turn.then(() => giveOn(key))
      },
    })
    const listen = (event: KeyboardEvent) => {
      if (givenOn.has(event) || event.key === 'Shift') return
      if (!singleKeys.on() || isElsewhere(event) || !reader.hear(event.key)) return
      event.preventDefault()
      event.stopImmediatePropagation()
    }
    window.addEventListener('keydown', listen, true)
    return () => window.removeEventListener('keydown', listen, true)
  }, [])
}

/** Whether a key belongs to a text that is typed, a dialog or a form. Enter on a button ends a scan all the same. */
function isElsewhere(event: KeyboardEvent): boolean {
  if (event.key !== 'Enter') return keyIsTaken(event)
  const target = event.target
  return target instanceof Element && target.closest('input, textarea, select, dialog, [contenteditable]') !== null
}

function giveOn(key: string): void {
  const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true })
  givenOn.add(event)
  const place = document.activeElement ?? document.body
  place.dispatchEvent(event)
}
