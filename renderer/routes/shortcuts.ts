import { useEffect, useRef } from 'react'

/** A single key and what it does. `when` groups keys in the help. */
export type Shortcut = { key: string; does: string; where: 'anywhere' | 'bench' | 'calibration' | 'curve' | 'lists' }

/** Every shortcut of the program, as the help shows them. */
export const shortcuts: readonly Shortcut[] = [
  { key: 'B', does: 'Bench', where: 'anywhere' },
  { key: 'S', does: 'Specimens', where: 'anywhere' },
  { key: 'K', does: 'Breaks', where: 'anywhere' },
  { key: 'I', does: 'Calibration', where: 'anywhere' },
  { key: 'V', does: 'Archive', where: 'anywhere' },
  { key: 'U', does: 'SI or US customary units', where: 'anywhere' },
  { key: '?', does: 'This help', where: 'anywhere' },
  { key: 'T', does: 'Take the zero (tare)', where: 'bench' },
  { key: 'A', does: 'Arm or disarm', where: 'bench' },
  { key: 'N', does: 'Next specimen', where: 'bench' },
  { key: 'L', does: 'Load the virtual specimen (demo)', where: 'bench' },
  { key: '0–9', does: 'Wood failure in percent', where: 'bench' },
  { key: '↑ ↓', does: 'Wood failure in steps of 5 %', where: 'bench' },
  { key: 'F', does: 'Failure pattern', where: 'bench' },
  { key: 'O', does: 'Note', where: 'bench' },
  { key: 'Enter', does: 'Save what you see on the faces', where: 'bench' },
  { key: 'X', does: 'Set the break aside, or take it back', where: 'bench' },
  { key: 'C', does: 'Open the curve of the last break', where: 'bench' },
  { key: 'Enter', does: 'Go on: what the screen asks for is done', where: 'calibration' },
  { key: 'R', does: 'Repeat the step that was read last', where: 'calibration' },
  { key: 'N', does: 'Leave this step out', where: 'calibration' },
  { key: 'Bksp', does: 'Back to the step before', where: 'calibration' },
  { key: 'Esc', does: 'Stop waiting for a steady reading', where: 'calibration' },
  { key: 'B', does: 'Break off (all readings are kept)', where: 'calibration' },
  { key: 'L', does: 'Hang the weights on the virtual cell (demo)', where: 'calibration' },
  { key: '+ −', does: 'Zoom in, zoom out', where: 'curve' },
  { key: '0', does: 'Whole curve', where: 'curve' },
  { key: '← →', does: 'Move the cursor, with Shift by ten', where: 'curve' },
  { key: 'PgUp PgDn', does: 'Move along the curve', where: 'curve' },
  { key: ', .', does: 'Event before, next event', where: 'curve' },
  { key: 'P', does: 'Take this sample as the peak', where: 'curve' },
  { key: '/', does: 'Search', where: 'lists' },
  { key: '↑ ↓', does: 'Move between rows', where: 'lists' },
  { key: 'Enter', does: 'Open the record', where: 'lists' },
  { key: 'Space', does: 'Select the break, or no longer', where: 'lists' },
  { key: 'Shift ↑ ↓', does: 'Select on the way', where: 'lists' },
  { key: 'Ctrl A', does: 'Select all that fit', where: 'lists' },
  { key: 'Del', does: 'Take the curve out of the comparison', where: 'lists' },
]

/** Whether single keys act at all: speech input and some aids need them off. */
const storageKey = 'breakledger.single-keys'
export const singleKeys = {
  on: () => localStorage.getItem(storageKey) !== 'off',
  set: (on: boolean) => localStorage.setItem(storageKey, on ? 'on' : 'off'),
}

/** True when keys belong to something else: a text being typed, an open dialog, a control that uses them itself. */
export function keyIsTaken(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return true
  const target = event.target
  if (!(target instanceof Element)) return false
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
