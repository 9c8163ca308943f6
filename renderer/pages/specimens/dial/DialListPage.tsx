import { useMemo, useState } from 'react'
import { askForName } from '#words/settings/signatureWords.ts'
import { dialLineHint, dialListWords, dialRecordedWords, tooManyLines } from '#words/specimens/dialWords.ts'
import { peakOnlyMeaning } from '#words/specimens/typedResultWords.ts'
import { inUnit } from '#words/units/notANumber.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { rememberSigner, useSigner } from '../../../parts/decisions/signer.ts'
import { today } from '../../../parts/forms/today.ts'
import { hashOf } from '../../../routes/route.ts'
import { Field, TextField } from '../../../widgets/Field.tsx'
import { Form } from '../../../widgets/forms/Form.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { DialLinesTable } from './DialLinesTable.tsx'
import { readDialLines } from './dialLines.ts'
import { judgeLines } from './dialList.ts'
import './dial.css'

/** The contract takes no more at once. */
const mostLines = 1000

/** A whole list of readings of a dial, typed or pasted, each line understood at once, and signed once. */
export function DialListPage() {
  const quantities = useQuantities()
  const { force } = quantities
  const add = useAction('typedResults.add')
  const [text, setText] = useState('')
  const [step, setStep] = useState('')
  const [by, setBy] = useState(useSigner())
  const [asked, setAsked] = useState(false)
  const [recorded, setRecorded] = useState(0)
  const read = useMemo(() => readDialLines(text, force), [text, force])
  const numbers = [...new Set(read.flatMap((line) => (line.kind === 'read' ? [line.said.number] : [])))]
  const isTooLong = read.length > mostLines
  const answer = useAnswer('numbers.list', numbers.length === 0 || isTooLong ? null : { numbers })
  const known = new Map((answer.value ?? []).map((one) => [one.number, one]))
  const lines = judgeLines(read, known, quantities, today())
  const resolution = readQuantity(step, force, `the step ${inUnit(force.unit)}, such as 50`)
  const resolutionN = 'stored' in resolution ? resolution.stored : null
  const stepError =
    'error' in resolution ? resolution.error : resolutionN !== null && resolutionN <= 0 ? stepAboveZero : null
  const wrong = lines.filter(({ error }) => error !== null).length
  const listError = isTooLong
    ? tooManyLines(mostLines)
    : lines.length === 0
      ? 'Type or paste at least one reading.'
      : wrong > 0
        ? 'Mend the lines that are marked below, or take them out.'
        : null

  async function submit(): Promise<boolean> {
    setAsked(true)
    setRecorded(0)
    const who = by.trim()
    const readings = lines.flatMap(({ said, specimenId }) => {
      if (said === null || specimenId === null) return []
      const { number: _number, ...rest } = said
      return [{ ...rest, specimenId, resolutionN, readBy: who }]
    })
    // A number that is still asked for is not left out
    if (who === '' || stepError !== null || listError !== null || readings.length < lines.length) return false
    rememberSigner(who)
    const stored = await add.run({ readings, by: who })
    if (stored === null) return false
    setText('')
    setAsked(false)
    setRecorded(stored.length)
    return true
  }

  return (
    <div className="plain-page">
      <header>
        <p className="crumb">
          <a href={hashOf({ page: 'specimens' })}>Specimens</a>
          <a href={hashOf({ page: 'import' })}>Import</a>
        </p>
        <h1>Dial readings</h1>
        <p className="prose">For days without electronics. {peakOnlyMeaning}</p>
      </header>
      <Form onSubmit={submit}>
        <TextField
          label="Readings, one a line"
          rows={8}
          spellCheck={false}
          value={text}
          hint={dialLineHint}
          error={asked ? listError : isTooLong ? listError : null}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <p role="status">
          {recorded > 0 && text === '' ? dialRecordedWords(recorded) : isTooLong ? '' : dialListWords(countsOf(lines))}
        </p>
        {lines.length === 0 || isTooLong ? null : <DialLinesTable lines={lines} />}
        <div className="field-pair">
          <Field
            label="Smallest step of the dial"
            unit={force.unit}
            value={step}
            error={asked ? stepError : null}
            onChange={(event) => setStep(event.currentTarget.value)}
          />
          <Field
            label="Name or initials of who read it"
            required
            value={by}
            maxLength={200}
            error={asked && by.trim() === '' ? askForName : null}
            onChange={(event) => setBy(event.currentTarget.value)}
          />
        </div>
        <Notice trouble={add.error ?? answer.error} onDismiss={add.dismiss} />
        <div className="form-buttons">
          <button type="submit" className="button button-primary" aria-disabled={add.pending}>
            Record the readings
          </button>
        </div>
      </Form>
    </div>
  )
}

const stepAboveZero = 'A step is above 0.'

function countsOf(lines: ReturnType<typeof judgeLines>) {
  const wrong = lines.filter(({ error }) => error !== null).length
  const asked = lines.filter(({ questions }) => questions.length > 0).length
  return { read: lines.length - wrong, wrong, asked }
}
