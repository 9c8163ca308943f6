import { type FormEvent, useState } from 'react'
import type { Preferences } from '#contract/settings/settings.ts'
import { writeTyped } from '#words/units/numbers.ts'
import type { Action } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Field } from '../../widgets/Field.tsx'
import { readPressSpeed } from './pressSpeed.ts'

/** The speed of the press, where it is known and constant: work to failure and the judgement of the speed need it. */
export function PressSpeedForm({ preferences, set }: { preferences: Preferences; set: Action<'preferences.set'> }) {
  const { length } = useQuantities()
  const factor = 60 * length.factor
  const unit = `${length.unit}/min`
  const { detection } = preferences
  const stored = detection.pressSpeedMmPerS
  const shown = writeTyped(stored, factor)
  const [typed, setTyped] = useState(shown)
  const [asked, setAsked] = useState(false)
  const read = readPressSpeed(typed, factor, unit)

  function submit(event: FormEvent): void {
    event.preventDefault()
    setAsked(true)
    if (!('error' in read)) void set.run({ detection: { ...detection, ...read } })
  }

  return (
    <form className="form" noValidate onSubmit={submit}>
      <Field
        label="Press speed"
        unit={unit}
        inputMode="decimal"
        value={typed}
        onChange={(event) => setTyped(event.currentTarget.value)}
        error={asked && 'error' in read ? read.error : null}
        hint="Only if it is known and constant; leave it empty for a hand pump. Used from the next break on; evaluate again to apply it to stored breaks."
      />
      <div>
        <button type="submit" className="button" disabled={typed === shown}>
          Save
        </button>
      </div>
    </form>
  )
}
