import { useState } from 'react'
import type { Preferences } from '#contract/settings/settings.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { keptText } from '#words/units/typedQuantity.ts'
import type { Action } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { shownTexts, type UnitFields } from '../../parts/forms/typedTexts.ts'
import { untouched, useTypedTexts } from '../../parts/forms/useTypedTexts.ts'
import { Field } from '../../widgets/Field.tsx'
import { Form } from '../../widgets/forms/Form.tsx'
import { readPressSpeed } from './pressSpeed.ts'

const speedUnit: UnitFields<'speed'> = { speed: ({ pressSpeed }) => pressSpeed }

/** The speed of the press, where it is known and constant: work to failure and the judgement of the speed need it. */
export function PressSpeedForm({ preferences, set }: { preferences: Preferences; set: Action<'preferences.set'> }) {
  const quantities = useQuantities()
  const { detection } = preferences
  const kept = untouched({ speed: keptText(detection.pressSpeedMmPerS, quantitiesIn('SI').pressSpeed) })
  const form = useTypedTexts(() => kept, speedUnit)
  const typed = form.shown.speed
  const [asked, setAsked] = useState(false)
  const read = readPressSpeed(form.readable.speed, quantities)

  async function submit(): Promise<boolean> {
    setAsked(true)
    return !('error' in read) && (await set.run({ detection: { ...detection, ...read } })) !== null
  }

  return (
    <Form onSubmit={submit} focusFirst={false}>
      <Field
        label="Press speed"
        unit={quantities.pressSpeed.unit}
        value={typed}
        onChange={(event) => form.onTexts({ speed: event.currentTarget.value })}
        error={asked && 'error' in read ? read.error : null}
        hint="Only if it is known and constant; leave it empty for a hand pump. Used from the next break on; evaluate again to apply it to stored breaks."
      />
      <div>
        <button
          type="submit"
          className="button"
          aria-disabled={typed === shownTexts(kept, speedUnit, quantities).speed}
        >
          Save
        </button>
      </div>
    </Form>
  )
}
