import { useState } from 'react'
import type { FindingsSettings } from '#contract/findings/keptFinding.ts'
import type { Findings } from '#contract/findings/procedures.ts'
import { ageToShow, filterOf } from '#domain/findings/askedBlocks.ts'
import { namesOf } from '#words/findings/groupNames.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { StudyCrumb } from '../../parts/programme/StudyCrumb.tsx'
import { go } from '../../parts/routing/useRoute.ts'
import { hashOf } from '../../routes/route.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { Answer } from './Answer.tsx'
import { AgeingPart } from './ageing/AgeingPart.tsx'
import { Blocks } from './Blocks.tsx'
import { ClimateSentences } from './climate/ClimateSentences.tsx'
import { FindingsProgress } from './FindingsProgress.tsx'
import { FindingsSettingsForm } from './FindingsSettingsForm.tsx'
import { firstSettings, kindsFor, ofAllBlocks, readMargin, treatmentOf, withReferenceOf } from './findingsQuestions.ts'
import { GroupTable } from './GroupTable.tsx'
import { KeptFindings } from './kept/KeptFindings.tsx'
import { NextPart } from './next/NextPart.tsx'
import { OutlierSection } from './outliers/OutlierSection.tsx'
import { RestsOn } from './RestsOn.tsx'
import './findings.css'

/** What the results show: a question, the answer in a sentence, its figure and table, and the way back to every block. */
export function FindingsPage({ studyId = null }: { studyId?: number | null | undefined }) {
  const [chosen, setSettings] = useState<FindingsSettings>(firstSettings)
  // The study stands in the address, so that others lead to its findings
  const ofStudy = studyId === null ? {} : { studyId }
  const studies = useAnswer('studies.list', {}).value?.rows ?? []
  // What may be chosen is known of all results of the study; what is shown, of those that were chosen.
  const all = useAnswer('findings.of', { options: { only: ['group-summary'] }, filter: { studyId } })
  const settings = withReferenceOf(
    studies.find((study) => study.studyId === studyId),
    { ...chosen, studyId },
    (all.value?.groups ?? []).map(({ adhesive }) => adhesive),
  )
  const answer = useAnswer('findings.of', questionOf(settings))
  const shown = answer.value
  return (
    <div className="plain-page findings-page">
      <header className="record-head">
        <div>
          {studyId === null ? null : (
            <p className="crumb">
              <StudyCrumb studyId={studyId} />
            </p>
          )}
          <h1>Findings</h1>
        </div>
        <div className="record-buttons">
          <a className="button" href={hashOf({ page: 'overview', ...ofStudy })}>
            Overview
          </a>
          <a className="button" href={hashOf({ page: 'climate' })}>
            Store climate
          </a>
        </div>
      </header>
      <Notice trouble={answer.error ?? all.error} />
      <KeptFindings
        onOpen={(kept) => {
          setSettings(kept)
          goToStudy(kept.studyId)
        }}
      />
      <FindingsSettingsForm
        settings={settings}
        onSettings={(change) => setSettings((before) => ({ ...before, ...change }))}
        onStudy={(next) => {
          setSettings((before) => ({ ...before, ...ofAllBlocks }))
          goToStudy(next)
        }}
        all={all.value}
      />
      {answer.pending ? <FindingsProgress /> : null}
      {shown === null ? null : settings.asked === 'next' ? (
        <NextPart found={shown} settings={settings} />
      ) : shown.blocks.length === 0 ? (
        <p className="prose">No result fits. Break specimens whose bonded area is known, or choose less narrowly.</p>
      ) : (
        <Found found={shown} settings={settings} />
      )}
      <ClimateSentences exposures={(shown?.groups ?? []).map(({ exposure }) => exposure)} />
    </div>
  )
}

function goToStudy(studyId: number | null): void {
  go(studyId === null ? { page: 'findings' } : { page: 'findings', studyId })
}

function Found({ found, settings }: { found: Findings; settings: FindingsSettings }) {
  const { length } = useQuantities()
  const name = namesOf(found.groups, length.text)
  const ageMonths = ageToShow(found.blocks, settings.ageMonths)
  if (ageMonths === undefined) return null
  const view = { found, settings, ageMonths, name }
  if (settings.asked === 'changed')
    return (
      <>
        <AgeingPart {...view} />
        <RestsOn {...view} ageMonths="all" />
      </>
    )
  return (
    <>
      <Answer {...view} />
      <GroupTable {...view} />
      <OutlierSection {...view} />
      <Blocks {...view} />
      <RestsOn {...view} />
    </>
  )
}

function questionOf(settings: FindingsSettings) {
  const { asked, reference, marginPercent } = settings
  return {
    options: {
      ...treatmentOf(settings),
      reference: reference === '' ? null : reference,
      marginPercent: readMargin(marginPercent).percent,
      only: [...kindsFor[asked]],
    },
    filter: filterOf(settings),
  }
}
