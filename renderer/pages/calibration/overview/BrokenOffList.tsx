import type { BrokenOffRoutine } from '#contract/calibration/calibrationRoutine.ts'
import { countOf } from '#words/units/counts.ts'
import { instantWords } from '#words/units/times.ts'
import { ReadingsTable } from '../record/ReadingsTable.tsx'

/** Routines that came to no calibration: their readings stay, and can be looked at. */
export function BrokenOffList({ routines }: { routines: readonly BrokenOffRoutine[] }) {
  return (
    <section aria-labelledby="broken-off-title">
      <h2 id="broken-off-title">Stopped early</h2>
      <ul className="broken-off">
        {routines.toReversed().map((routine) => (
          <li key={routine.routineId}>
            <details>
              <summary>
                {instantWords(routine.begunAt)}
                {routine.by === '' ? '' : `, ${routine.by}`}:{' '}
                {routine.reason === '' ? 'the program ended while it ran' : routine.reason}
                <span className="quiet"> {countOf(routine.readings.length, 'reading')} kept</span>
              </summary>
              {routine.readings.length === 0 ? null : <ReadingsTable readings={routine.readings} unit={null} />}
            </details>
          </li>
        ))}
      </ul>
    </section>
  )
}
