import { type KeyboardEvent, type PointerEvent, useId } from 'react'
import { enterKey, type WoodFailureEntry } from './woodFailureEntry.ts'
import './assessment.css'

/** Percent of the bonded area that failed in the wood, in steps of 5: twenty fields that fill, digits and arrow keys. */
export function WoodFailure({ entry, onEntry }: { entry: WoodFailureEntry; onEntry(entry: WoodFailureEntry): void }) {
  const id = useId()
  const { percent } = entry

  function onKeyDown(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    // As in a line of text
    if (event.key === 'Enter') event.currentTarget.closest('form')?.requestSubmit()
    const next = enterKey(entry, event.key, performance.now())
    if (next === null) return
    event.preventDefault()
    onEntry(next)
  }

  function onPointer(event: PointerEvent<HTMLElement>): void {
    if (event.type === 'pointermove' && event.buttons !== 1) return
    const { left, width } = event.currentTarget.getBoundingClientRect()
    const share = Math.min(Math.max((event.clientX - left) / width, 0), 1)
    onEntry({ percent: Math.round(share * 20) * 5, digits: '', lastKeyMs: Number.NEGATIVE_INFINITY })
  }

  return (
    <div className="wood-failure">
      <p className="wood-failure-head">
        <span>
          <span id={id}>Wood failure</span> <span className="quiet">share of the bonded area</span>
        </span>
        <strong data-none={percent === null ? '' : undefined}>
          {percent === null ? 'not assessed' : `${percent} %`}
        </strong>
      </p>
      <div
        className="wood-failure-scale"
        role="slider"
        tabIndex={0}
        aria-labelledby={id}
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={percent ?? 0}
        aria-valuetext={percent === null ? 'not assessed' : `${percent} percent`}
        data-own-keys=""
        onKeyDown={onKeyDown}
        onPointerDown={onPointer}
        onPointerMove={onPointer}
      >
        {Array.from({ length: 20 }, (_, index) => index * 5).map((from) => (
          <span key={from} data-filled={percent !== null && from < percent ? '' : undefined} />
        ))}
      </div>
    </div>
  )
}
