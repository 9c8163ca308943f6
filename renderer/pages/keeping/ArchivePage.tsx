import { useState } from 'react'
import type { ArchiveInfo } from '#contract/keeping/archive.ts'
import type { Progress, TaskName } from '#contract/tasks.ts'
import { simulatedBreaksWords } from '#words/keeping/demoWords.ts'
import { chainFindingWords, checkedWords, soundWords } from '#words/keeping/verifyWords.ts'
import { asSentence } from '#words/sentence.ts'
import { writeCount } from '#words/units/numbers.ts'
import { exactSentenceIn } from '#words/units/sentenceIn.ts'
import { useAction } from '../../host/useAction.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { useEvent } from '../../host/useEvent.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { HeadOfChain } from './HeadOfChain.tsx'
import './archive.css'

const task: TaskName = 'verify'

/** The archive: where it is, what it holds, and whether it is sound. */
export function ArchivePage() {
  const info = useAnswer('app.info', {})
  const verify = useAction('archive.verify')
  const cancel = useAction('task.cancel')
  const [progress, setProgress] = useState<Progress | null>(null)
  useEvent('task.progress', (next) => next.task === task && setProgress(next))
  const archive = info.value?.archive
  const cancelled = verify.error?.code === 'cancelled'
  return (
    <div className="plain-page">
      <h1>Archive</h1>
      <Notice trouble={info.error} />
      {info.value?.chainFinding == null ? null : (
        <p className="prose" role="alert">
          <strong>{chainFindingWords(info.value.chainFinding)}</strong>
        </p>
      )}
      {archive === undefined ? null : <Facts archive={archive} program={info.value?.program ?? ''} />}
      <section className="archive-section" aria-labelledby="verify-title">
        <h2 id="verify-title">Verify the archive</h2>
        <p className="prose">
          Checks the whole file: the database itself, the chain of checksums through every record, and that each curve
          decodes to the checksum and peak it was stored with. Nothing is changed.
        </p>
        <div className="verify-line">
          <button
            type="button"
            className="button button-primary"
            aria-disabled={verify.pending}
            onClick={() => {
              setProgress(null)
              void verify.run({})
            }}
          >
            Verify the archive
          </button>
          {verify.pending ? (
            <>
              <progress
                aria-label="Verification"
                max={progress?.total || 1}
                {...(progress === null ? {} : { value: progress.done })}
              />
              <span>
                {progress === null ? 'starting' : `${writeCount(progress.done)} of ${writeCount(progress.total)}`}
              </span>
              <button type="button" className="button" onClick={() => void cancel.run({ task })}>
                Cancel
              </button>
            </>
          ) : null}
        </div>
        <div aria-live="polite">
          {cancelled && !verify.pending ? <p className="prose">Cancelled. Nothing was changed.</p> : null}
          {verify.value === null || verify.pending || verify.error !== null ? null : (
            <VerifyWords report={verify.value} />
          )}
        </div>
        <Notice trouble={cancelled ? null : verify.error} />
      </section>
      <HeadOfChain />
    </div>
  )
}

function Figure({ name, value }: { name: string; value: number }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{writeCount(value)}</dd>
    </div>
  )
}

function VerifyWords({ report }: { report: NonNullable<ReturnType<typeof useAction<'archive.verify'>>['value']> }) {
  const quantities = useQuantities()
  const looked = asSentence(checkedWords(report))
  if (report.sound)
    return (
      <p className="verify-result" data-sound="">
        <strong>{asSentence(soundWords(report))}</strong> {looked}
      </p>
    )
  return (
    <div className="verify-result">
      <p>
        <strong>{asSentence(soundWords(report))} Do not go on recording into this file.</strong> {looked} Copy the file
        before anything else and go back to a sound copy.
      </p>
      <ul className="flag-list">
        {report.faults.map((fault) => (
          <li key={fault.where + fault.what}>
            <strong>{fault.where}</strong>: {exactSentenceIn(fault.what, quantities)}
          </li>
        ))}
      </ul>
    </div>
  )
}

/** What the archive is and holds. */
function Facts({ archive, program }: { archive: ArchiveInfo; program: string }) {
  return (
    <>
      <dl className="archive-figures">
        <Figure name="Specimens" value={archive.specimens} />
        <Figure name="Breaks" value={archive.breaks} />
        <Figure name="Format version" value={archive.formatVersion} />
      </dl>
      <dl className="facts archive-facts">
        <div>
          <dt>File</dt>
          <dd className="path">{archive.path}</dd>
        </div>
        <div>
          <dt>Program</dt>
          <dd>{program}</dd>
        </div>
        {archive.demo ? (
          <div>
            <dt>Demo</dt>
            <dd>Holds the invented demo study.</dd>
          </div>
        ) : null}
        {archive.simulated > 0 ? (
          <div>
            <dt>Simulated</dt>
            <dd>{simulatedBreaksWords(archive.simulated, archive.breaks)}</dd>
          </div>
        ) : null}
        {archive.recovered.length > 0 ? (
          <div>
            <dt>Recovered</dt>
            <dd>
              {archive.recovered.length === 1 ? 'One break was' : `${archive.recovered.length} breaks were`} unfinished
              when the program last ended, and kept: {archive.recovered.map((id) => `break ${id}`).join(', ')}.
            </dd>
          </div>
        ) : null}
      </dl>
    </>
  )
}
