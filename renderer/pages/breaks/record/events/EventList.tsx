import type { KeyboardEvent } from 'react'
import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { eventFigures, eventTimeWords } from '#words/breaks/eventFigures.ts'
import { eventMeaning } from '#words/breaks/eventMeaning.ts'
import { eventNames } from '#words/breaks/eventWords.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'
import './events.css'

/** What happened on the curve, in order of time; choosing one shows it closely. Arrow keys move between them. */
export function EventList({
  events,
  chosen,
  onChoose,
}: {
  /** null: not evaluated yet. */
  events: readonly CurveEvent[] | null
  chosen: number | null
  /** null: none, and the whole curve. */
  onChoose(index: number | null): void
}) {
  const { force } = useQuantities()
  if (events === null) return <p className="empty-words">Not evaluated yet.</p>
  if (events.length === 0) return <p className="empty-words">None was found.</p>
  const move = (event: KeyboardEvent<HTMLOListElement>) => {
    const steps = { ArrowDown: 1, ArrowUp: -1 }[event.key]
    if (event.key === 'Escape' && chosen !== null) onChoose(null)
    if (steps === undefined) return
    event.preventDefault()
    const buttons = [...event.currentTarget.querySelectorAll('button')]
    const to = buttons.indexOf(document.activeElement as HTMLButtonElement) + steps
    if (to < 0 || to >= buttons.length) return
    buttons[to]?.focus()
    onChoose(to)
  }
  return (
    <ol className="event-list" data-own-keys="" onKeyDown={move}>
      {events.map((event, index) => (
        <li key={`${event.kind} ${event.startTimeS}`}>
          <button
            type="button"
            aria-pressed={index === chosen}
            onClick={() => onChoose(index === chosen ? null : index)}
          >
            <span className="event-head">
              <svg viewBox="0 0 16 16" aria-hidden="true">
                <path d="M8 2.5 14 13.5H2Z" />
              </svg>
              <strong>{eventNames[event.kind]}</strong>
              <span className="quiet">{eventTimeWords(event)}</span>
            </span>
            <span className="event-figures">
              {eventFigures(event, force).map(([name, value]) => (
                <span key={name}>
                  {name} <b>{value}</b>
                </span>
              ))}
            </span>
            <span className="event-meaning">{eventMeaning(event)}</span>
          </button>
        </li>
      ))}
    </ol>
  )
}
