import { useState } from 'react'
import type { TestPractice } from '#contract/settings/practice.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import { practiceWords } from '#words/settings/practiceWords.ts'
import type { Action } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { PracticeDialog } from './PracticeDialog.tsx'

/** The test practices that loadings are judged by: which one is chosen, and what each asks for. */
export function PracticeSettings({ preferences, set }: { preferences: Preferences; set: Action<'preferences.set'> }) {
  const quantities = useQuantities()
  const { practices, practice: chosen } = preferences
  /** Its place in the list; "new" for one to be added. */
  const [edited, setEdited] = useState<number | 'new' | null>(null)
  const before = typeof edited === 'number' ? (practices[edited] ?? null) : null

  async function save(next: TestPractice): Promise<boolean> {
    const list = before === null ? [...practices, next] : practices.map((one) => (one === before ? next : one))
    const choice = before !== null && chosen === before.name ? { practice: next.name } : {}
    const isKept = (await set.run({ practices: list, ...choice })) !== null
    if (isKept) setEdited(null)
    return isKept
  }

  function remove(one: TestPractice): void {
    const list = practices.filter((other) => other !== one)
    void set.run({ practices: list, ...(chosen === one.name ? { practice: null } : {}) })
  }

  return (
    <>
      <fieldset className="practice-list">
        <legend>Test practice that loadings are compared with</legend>
        <label className="practice-choice">
          <input
            type="radio"
            name="practice"
            checked={chosen === null}
            onChange={() => void set.run({ practice: null })}
          />
          <strong>none</strong>
        </label>
        {practices.map((one, index) => (
          <div key={one.name} className="practice-line">
            <label className="practice-choice">
              <input
                type="radio"
                name="practice"
                checked={chosen === one.name}
                onChange={() => void set.run({ practice: one.name })}
              />
              <strong>{one.name}</strong>
              <span className="practice-limits">{practiceWords(one, quantities)}</span>
              <span className="quiet">{one.source}</span>
            </label>
            <button
              type="button"
              className="button button-small"
              aria-label={`Change ${one.name}`}
              onClick={() => setEdited(index)}
            >
              Change
            </button>
            <button
              type="button"
              className="button button-small"
              aria-label={`Remove ${one.name}`}
              onClick={() => remove(one)}
            >
              Remove
            </button>
          </div>
        ))}
      </fieldset>
      <button type="button" className="button" aria-disabled={practices.length >= 50} onClick={() => setEdited('new')}>
        Add a practice
      </button>
      {edited === null ? null : (
        <PracticeDialog
          practice={before}
          taken={practices.filter((one) => one !== before).map(({ name }) => name)}
          pending={set.pending}
          onSave={save}
          onClose={() => setEdited(null)}
        />
      )}
    </>
  )
}
