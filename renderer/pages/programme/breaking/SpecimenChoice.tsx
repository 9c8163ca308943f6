import { type KeyboardEvent, useEffect, useState } from 'react'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { specimenWords } from '#words/specimens/specimenWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { Field } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'

export type ChosenSpecimen = Pick<SpecimenSummary, 'specimenId' | 'fields'>

/** So many are added at once at most. */
const mostFound = 500

/** Any waiting specimens: found by a search or a scanned number, and added to the session with Enter. */
export function SpecimenChoice({
  specimens,
  onSpecimens,
}: {
  specimens: readonly ChosenSpecimen[]
  onSpecimens(specimens: readonly ChosenSpecimen[]): void
}) {
  const [text, setText] = useState('')
  /** Enter came before what fits was known, as it does from a scanner. */
  const [isEntered, setEntered] = useState(false)
  const wanted = text.trim()
  const found = useAnswer(
    'specimens.list',
    wanted === '' ? null : { text: wanted, status: 'waiting', sort: 'number', offset: 0, limit: mostFound },
  )
  // The answer before stays until the new one is there
  const answered = wanted === '' || found.pending || found.error !== null ? [] : (found.value?.rows ?? [])
  // One that broke and whose result was set aside has none, and is open all the same
  const rows = answered.filter(({ timesBroken }) => timesBroken === 0)
  const chosen = new Set(specimens.map(({ specimenId }) => specimenId))
  const exact = rows.filter(({ fields }) => fields.number.toLowerCase() === wanted.toLowerCase())
  const toAdd = (exact.length > 0 ? exact : rows).filter(({ specimenId }) => !chosen.has(specimenId))
  const isIn = exact.some(({ specimenId }) => chosen.has(specimenId))

  function add(): void {
    if (toAdd.length === 0) return
    onSpecimens([...specimens, ...toAdd])
    setText('')
  }
  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    if (event.key !== 'Enter') return
    event.preventDefault()
    if (found.pending) setEntered(true)
    else add()
  }
  useEffect(() => {
    if (!isEntered || found.pending) return
    setEntered(false)
    add()
  })

  return (
    <section aria-labelledby="others-title" className="breaking-others">
      <h2 id="others-title">Other specimens</h2>
      <div className="breaking-find">
        <Field
          label="Scan a number, or search the specimens that wait"
          value={text}
          autoComplete="off"
          onChange={(event) => {
            setText(event.currentTarget.value)
            setEntered(false)
          }}
          onKeyDown={onKeyDown}
        />
        <button type="button" className="button" aria-disabled={toAdd.length === 0} onClick={add}>
          {toAdd.length === 0 ? 'Add' : `Add ${countOf(toAdd.length, 'specimen')}`}
        </button>
      </div>
      <p role="status" className="quiet">
        {wanted === '' || found.pending || found.error !== null || toAdd.length > 0
          ? ''
          : isIn
            ? `${wanted} is in the session already.`
            : `No specimen that waits fits “${wanted}”.`}
      </p>
      <Notice trouble={found.error} />
      {specimens.length === 0 ? null : (
        <ul className="breaking-chosen">
          {specimens.map(({ specimenId, fields }) => (
            <li key={specimenId}>
              <strong>{fields.number}</strong> {specimenWords(fields)}
              <button
                type="button"
                className="button button-quiet button-small"
                aria-label={`Take out ${fields.number}`}
                onClick={() => onSpecimens(specimens.filter((one) => one.specimenId !== specimenId))}
              >
                Take out
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
