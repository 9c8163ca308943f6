import { useState } from 'react'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { strengthQuestion } from '#words/specimens/plausibleWords.ts'
import { inUnit } from '#words/units/notANumber.ts'
import { stillToComeQuestion } from '#words/units/typedDay.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'
import { useAction } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { WoodFailure } from '../../parts/assessment/WoodFailure.tsx'
import { emptyEntry } from '../../parts/assessment/woodFailureEntry.ts'
import { SignatureDialog } from '../../parts/decisions/SignatureDialog.tsx'
import { today } from '../../parts/forms/today.ts'
import { Field, TextField } from '../../widgets/Field.tsx'

const brokeBefore = 'This specimen broke already; where no break counts, its newest reading that is used stands for it.'
const standsAlone = 'It stands as a peak alone, without a curve; the name is that of who read the dial.'

/** A reading of a dial, for days without electronics: load, smallest step, who read it, torn wood. Units may be typed behind a number. */
export function DialDialog({ current, onClose }: { current: SpecimenSummary; onClose(): void }) {
  const { force, strength } = useQuantities()
  const add = useAction('typedResults.add')
  const [load, setLoad] = useState('')
  const [step, setStep] = useState('')
  const [day, setDay] = useState('')
  const [note, setNote] = useState('')
  const [entry, setEntry] = useState(emptyEntry)
  const [asked, setAsked] = useState(false)
  const peak = readQuantity(load, force, `the load ${inUnit(force.unit)}, such as 4800`)
  const resolution = readQuantity(step, force, `the step ${inUnit(force.unit)}, such as 50`)
  const peakN = 'stored' in peak ? peak.stored : null
  const resolutionN = 'stored' in resolution ? resolution.stored : null
  const { areaMm2 } = current.fields
  const question = peakN === null || areaMm2 === null ? null : strengthQuestion(peakN / areaMm2, strength)
  const loadError = 'error' in peak ? peak.error : peakN === null || peakN <= 0 ? 'A load above 0 is needed.' : null
  const stepError =
    'error' in resolution ? resolution.error : resolutionN !== null && resolutionN <= 0 ? 'A step is above 0.' : null
  return (
    <SignatureDialog
      title={`Dial reading of ${current.fields.number}`}
      explains={current.timesBroken > 0 ? brokeBefore : standsAlone}
      button="Record the reading"
      why={null}
      pending={add.pending}
      error={add.error}
      onSign={async (signature) => {
        setAsked(true)
        if (signature === null || loadError !== null || stepError !== null) return false
        const reading = {
          ...{ specimenId: current.specimenId, peakN: peakN!, resolutionN, readBy: signature.by, note: note.trim() },
          ...{ woodFailurePercent: entry.percent, brokenOn: day === '' ? null : day },
        }
        return (await add.run({ readings: [reading], by: signature.by })) !== null
      }}
      onClose={onClose}
    >
      <Field
        label="Load"
        unit={force.unit}
        required
        value={load}
        error={asked ? loadError : null}
        question={question}
        onChange={(event) => setLoad(event.currentTarget.value)}
      />
      <Field
        label="Smallest step of the dial"
        unit={force.unit}
        value={step}
        error={asked ? stepError : null}
        onChange={(event) => setStep(event.currentTarget.value)}
      />
      <Field
        label="Day of the break"
        type="date"
        value={day}
        question={stillToComeQuestion(day, today())}
        onChange={(event) => setDay(event.currentTarget.value)}
      />
      <WoodFailure entry={entry} onEntry={setEntry} />
      <TextField label="Note" value={note} maxLength={4000} onChange={(event) => setNote(event.currentTarget.value)} />
    </SignatureDialog>
  )
}
