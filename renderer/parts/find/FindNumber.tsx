import { type FormEvent, useRef, useState } from 'react'
import type { FoundNumber } from '#contract/programme/labelProcedures.ts'
import { numberNotFoundWords, plannedBlockWords } from '#words/programme/findWords.ts'
import { useAction } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Keys } from '../../widgets/Keys.tsx'
import { takeScan } from '../routing/scanTakers.ts'
import { useSingleKeys } from '../routing/singleKeys.ts'
import { go } from '../routing/useRoute.ts'
import { useScans } from './useScans.ts'
import './findNumber.css'

/** What was looked for and not opened. */
type Answered = { typed: string; found: Exclude<FoundNumber, { kind: 'specimen' }> }

/** Finds a block by its number, typed into the field at the head of every page or scanned wherever no field has the focus. */
export function useFindNumber(): {
  find(number: string): Promise<void>
  answered: Answered | null
  error: ReturnType<typeof useAction<'numbers.find'>>['error']
  dismiss(): void
} {
  const action = useAction('numbers.find')
  const [answered, setAnswered] = useState<Answered | null>(null)

  async function find(number: string): Promise<void> {
    setAnswered(null)
    const found = await action.run({ number })
    if (found === null) return
    if (found.kind === 'specimen') go({ page: 'specimen', specimenId: found.specimenId })
    else setAnswered({ typed: number, found })
  }
  useScans((text) => {
    if (!takeScan(text)) void find(text)
  })
  return {
    find,
    answered,
    error: action.error,
    dismiss() {
      setAnswered(null)
      action.dismiss()
    },
  }
}

/** The field for a number. */
export function NumberField({ onFind }: { onFind(number: string): Promise<void> }) {
  const [typed, setTyped] = useState('')
  const field = useRef<HTMLInputElement>(null)
  useSingleKeys((key) => {
    if (key.toLowerCase() !== 'g') return false
    field.current?.focus()
    return true
  }, window)

  function submit(event: FormEvent): void {
    event.preventDefault()
    const number = typed.trim()
    if (number === '') return
    setTyped('')
    void onFind(number)
  }
  return (
    <search className="find-number">
      <form aria-label="Block by number" onSubmit={submit}>
        <input
          ref={field}
          aria-label="Number of a block"
          placeholder="Number"
          title="Type or scan the number of a block, then Enter"
          maxLength={200}
          autoComplete="off"
          value={typed}
          onChange={(event) => setTyped(event.currentTarget.value)}
        />
        <Keys keys="G" />
      </form>
    </search>
  )
}

/** What is said of a number that leads to no specimen. */
export function NumberAnswer({
  answered: { typed, found },
  onFind,
  onDismiss,
}: {
  answered: Answered
  onFind(number: string): Promise<void>
  onDismiss(): void
}) {
  const { length } = useQuantities()
  return (
    <div className="number-answer" role="status">
      {found.kind === 'planned' ? (
        <p>{plannedBlockWords(found, length)}</p>
      ) : (
        <p>{numberNotFoundWords(typed, found)}</p>
      )}
      {found.kind === 'none'
        ? found.nearest.map((number) => (
            <button type="button" key={number} className="button" onClick={() => void onFind(number)}>
              {number}
            </button>
          ))
        : null}
      <button type="button" className="button button-quiet" onClick={onDismiss}>
        Dismiss
      </button>
    </div>
  )
}
