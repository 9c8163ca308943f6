import { useState } from 'react'
import type { WeightEntry } from '#contract/calibration/weight.ts'
import { densityWords, toleranceWords } from '#words/calibration/toleranceWords.ts'
import { usualWeightsWords } from '#words/calibration/weightWords.ts'
import { instantWords } from '#words/units/times.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { WeightDialog } from './WeightDialog.tsx'
import { usualWeights } from './weightForm.ts'
import './weights.css'
import { useSigner } from '../../../parts/decisions/signer.ts'

/** The weights of the workshop: what is marked on them and how far that is to be believed. */
export function WeightsPage() {
  const { system: units } = useQuantities()
  const signer = useSigner()
  const kept = useAnswer('weights.list', {})
  const save = useAction('weights.save')
  const [editing, setEditing] = useState<number | 'new' | null>(null)
  const answer = save.value ?? kept.value
  const weights = answer?.weights ?? []

  async function keep(next: readonly WeightEntry[]): Promise<boolean> {
    return (await save.run({ weights: [...next], by: signer })) !== null
  }

  return (
    <div className="plain-page weights">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'calibration' })}>Calibration</a>
          </p>
          <h1>Weights</h1>
          <p className="prose">
            Each weight with the name marked on it. A class of OIML R 111 is only worth as much as the last check of the
            weight; one from the shop’s scale gets a tolerance of its own.
          </p>
        </div>
        <div className="record-buttons">
          <button type="button" className="button button-primary" onClick={() => setEditing('new')}>
            Add a weight
          </button>
        </div>
      </header>
      <Notice trouble={kept.error ?? save.error} />
      {weights.length === 0 ? (
        kept.pending ? null : (
          <div className="empty-start">
            <p>No weights entered yet.</p>
            <button type="button" className="button" onClick={() => void keep(usualWeights[units])}>
              {usualWeightsWords[units]}
            </button>
            <p className="quiet">Change each of them to what really is on your shelf.</p>
          </div>
        )
      ) : (
        <WeightsTable
          weights={weights}
          pending={save.pending}
          onChange={setEditing}
          onTakeOut={(index) => void keep(weights.filter((_, other) => other !== index))}
        />
      )}
      {answer?.savedAt ? (
        <p className="quiet">
          Saved {instantWords(answer.savedAt)}
          {answer.by === '' ? '' : ` by ${answer.by}`}. Earlier sets stay in the archive, and every calibration keeps
          the weights it was made with.
        </p>
      ) : null}
      {editing === null ? null : (
        <WeightDialog
          weight={editing === 'new' ? null : (weights[editing] ?? null)}
          others={weights.filter((_, index) => index !== editing).map(({ name }) => name)}
          error={save.error}
          pending={save.pending}
          onClose={() => setEditing(null)}
          onSave={async (weight) => {
            const next =
              editing === 'new' ? [...weights, weight] : weights.map((one, index) => (index === editing ? weight : one))
            const isKept = await keep(next)
            if (isKept) setEditing(null)
            return isKept
          }}
        />
      )}
    </div>
  )
}

/** The kept weights, each by its place in the set. */
function WeightsTable({
  weights,
  pending,
  onChange,
  onTakeOut,
}: {
  weights: readonly WeightEntry[]
  pending: boolean
  onChange(index: number): void
  onTakeOut(index: number): void
}) {
  const { mass, smallMass, density } = useQuantities()
  return (
    <table className="data-table">
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col" className="numeric">
            Nominal <span className="quiet">{mass.unit}</span>
          </th>
          <th scope="col" className="numeric">
            By certificate <span className="quiet">{mass.unit}</span>
          </th>
          <th scope="col">May be off by</th>
          <th scope="col">Density</th>
          <th scope="col">
            <span className="visually-hidden">Change</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {weights.map((weight, index) => (
          <tr key={weight.name}>
            <th scope="row">{weight.name}</th>
            <td className="numeric">{mass.number(weight.nominalKg)}</td>
            <td className="numeric">{mass.number(weight.conventionalMassKg)}</td>
            <td>{toleranceWords(weight, smallMass)}</td>
            <td>{densityWords(weight, density)}</td>
            <td className="data-table-buttons">
              <button
                type="button"
                className="button button-small"
                aria-label={`Change ${weight.name}`}
                onClick={() => onChange(index)}
              >
                Change
              </button>
              <button
                type="button"
                className="button button-small"
                aria-label={`Take out ${weight.name}`}
                aria-disabled={pending}
                onClick={() => onTakeOut(index)}
              >
                Take out
              </button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
