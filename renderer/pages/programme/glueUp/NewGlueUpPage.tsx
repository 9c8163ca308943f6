import { useState } from 'react'
import { countOf } from '#words/units/counts.ts'
import { useHost, useStore } from '../../../host/hostContext.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { StudyCrumb } from '../../../parts/programme/StudyCrumb.tsx'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { SelectField } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { GlueUpForm } from './GlueUpForm.tsx'
import { forgetDraft, keptDraft } from './glueUpDraft.ts'
import './glueUp.css'

/** A glue-up: which blocks, under which conditions, and how large each is; it makes a specimen of every block. */
export function NewGlueUpPage({ studyId }: { studyId?: number }) {
  const studies = useAnswer('glueUps.studies', {})
  const info = useStore(useHost().info)
  if (studies.value === null || info === null)
    return (
      <div className="plain-page">
        <Notice trouble={studies.error} />
      </div>
    )
  return <Chosen studies={studies.value} archive={info.archive.path} asked={studyId} />
}

type Study = { studyId: number; title: string; toGlue: number }

/** The study that is glued, and what was begun before and not stored. */
function Chosen({
  studies,
  archive,
  asked,
}: {
  studies: readonly Study[]
  archive: string
  asked: number | undefined
}) {
  const [begun, setBegun] = useState(() => keptDraft(archive))
  const [goesOn, setGoesOn] = useState(false)
  const known = (id: number | null) => id === null || studies.some((one) => one.studyId === id)
  const [studyId, setStudyId] = useState<number | null>(asked ?? studies[0]?.studyId ?? null)
  const draft = begun !== null && known(begun.studyId) ? begun : null
  const shown = goesOn && draft !== null ? draft.studyId : studyId
  return (
    <div className="plain-page">
      <header>
        <p className="crumb">
          <StudyCrumb studyId={asked} />
          <a href={hashOf({ page: 'glue-ups' })}>Glue-ups</a>
        </p>
        <h1>New glue-up</h1>
      </header>
      {draft === null || goesOn ? null : (
        <p className="running-words glue-begun">
          A glue-up with {Object.keys(draft.cells).length} sizes was begun here and not stored.{' '}
          <button type="button" className="button button-primary" onClick={() => setGoesOn(true)}>
            Go on with it
          </button>
          <button
            type="button"
            className="button"
            onClick={() => {
              forgetDraft()
              setBegun(null)
            }}
          >
            Throw it away
          </button>
        </p>
      )}
      {goesOn ? null : (
        <SelectField
          label="Study"
          value={studyId ?? ''}
          onChange={(event) => setStudyId(event.currentTarget.value === '' ? null : Number(event.currentTarget.value))}
        >
          {studies.map((study) => (
            <option key={study.studyId} value={study.studyId}>
              {study.title}, {countOf(study.toGlue, 'block')} to glue
            </option>
          ))}
          {known(studyId) ? null : <option value={studyId ?? ''}>Study {studyId}: every block is glued</option>}
          <option value="">Blocks of no study</option>
        </SelectField>
      )}
      <GlueUpForm
        key={`${shown} ${goesOn}`}
        archive={archive}
        studyId={shown}
        draft={goesOn ? draft : null}
        onStored={(glueUpId) => go({ page: 'glue-up', glueUpId })}
      />
    </div>
  )
}
