import { type ReactNode, useState } from 'react'
import type { ImportMapping } from '#contract/specimens/importMapping.ts'
import { askForName } from '#words/settings/signatureWords.ts'
import { importMeaning, mappingGap, mappingRemarks, sheetRemarks } from '#words/specimens/import/sheetWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { rememberSigner, useSigner } from '../../../parts/decisions/signer.ts'
import { FileChoice } from '../../../parts/files/FileChoice.tsx'
import { hashOf } from '../../../routes/route.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Field } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { BlockValues } from './BlockValues.tsx'
import { FieldTable } from './FieldTable.tsx'
import { FillMeanings } from './FillMeanings.tsx'
import { ImportProgress } from './ImportProgress.tsx'
import { ImportRuns } from './ImportRuns.tsx'
import { KeptMappings } from './KeptMappings.tsx'
import { measuredOf, withLayout, withMeasured } from './mappingDraft.ts'
import { Outcome } from './Outcome.tsx'
import { SheetOptions } from './SheetOptions.tsx'
import { SheetTable } from './SheetTable.tsx'
import { type ImportFile, useImportFile } from './useImportFile.ts'
import './import.css'

/** Brings past results in from a table: looked at, mapped, tried, and then stored, all of it or nothing. */
export function ImportPage() {
  const file = useImportFile()
  const runs = useAnswer('imports.list', {})
  return (
    <div className="plain-page import-page">
      <header>
        <p className="crumb">
          <a href={hashOf({ page: 'specimens' })}>Specimens</a>
          <a href={hashOf({ page: 'readings' })}>Dial readings</a>
        </p>
        <h1>{file.name ?? 'Import past results'}</h1>
        {file.view === null ? <p className="prose">{importMeaning}</p> : null}
      </header>
      <FileChoice
        label="File of past results"
        what="A table of past results"
        name={file.name}
        isBusy={file.doing !== null}
        onFile={(chosen) => void file.open(chosen)}
      />
      {file.view === null || file.mapping === null ? (
        <ImportProgress file={file} />
      ) : (
        <Work key={file.view.fileSha256} file={file} mapping={file.mapping} runs={runs.value ?? []} />
      )}
      {file.view === null ? <Notice trouble={file.error} /> : null}
      <Notice trouble={runs.error} />
      <ImportRuns runs={runs.value ?? []} />
    </div>
  )
}

const layouts: readonly { value: ImportMapping['layout']; label: string }[] = [
  { value: 'row-per-specimen', label: 'A row is one block' },
  { value: 'row-per-group', label: 'A row is a group, its blocks across' },
  { value: 'blocks', label: 'Blocks side by side, each with columns of its own' },
]

/** A file that was read: its sheet, what its columns mean, and what becomes of its rows. */
function Work({
  file,
  mapping,
  runs,
}: {
  file: ImportFile
  mapping: ImportMapping
  runs: Parameters<typeof KeptMappings>[0]['runs']
}) {
  const view = file.view!
  const onMapping = (next: ImportMapping) => file.setMapping(next)
  return (
    <>
      <SheetOptions
        view={view}
        mapping={mapping}
        onLook={(change) => void file.look(change, null)}
        onMapping={onMapping}
      />
      <KeptMappings mapping={mapping} runs={runs} onTake={(taken) => void file.look(...lookFor(taken, view))} />
      <div className="import-options">
        <Choice
          label="Layout"
          options={layouts}
          value={mapping.layout}
          onChange={(to) => onMapping(withLayout(mapping, to))}
        />
        {mapping.layout !== 'row-per-group' ? null : (
          <Choice
            label="The replicates are"
            options={[
              { value: 'load', label: 'Loads' },
              { value: 'strength', label: 'Strengths' },
            ]}
            value={measuredOf(mapping)}
            onChange={(measured) => onMapping(withMeasured(mapping, measured))}
          />
        )}
      </div>
      <Remarks>
        {[...sheetRemarks(view), ...mappingRemarks(mapping)].map((remark) => (
          <li key={remark}>{remark}</li>
        ))}
      </Remarks>
      <SheetTable view={view} mapping={mapping} onMapping={onMapping} />
      <FieldTable mapping={mapping} columns={view.columns} onMapping={onMapping} />
      {mapping.layout === 'blocks' ? (
        <BlockValues mapping={mapping} columns={view.columns} onMapping={onMapping} />
      ) : null}
      <FillMeanings mapping={mapping} columns={view.columns} onMapping={onMapping} />
      <Go file={file} gap={mappingGap(mapping)} />
      {file.answer === null ? null : <Outcome key={String(file.answer.summary.dryRun)} answer={file.answer} />}
    </>
  )
}

/** How a file is looked at for a mapping that was kept; the sheet that it names may be in another file. */
function lookFor(taken: ImportMapping | null, view: NonNullable<ImportFile['view']>): Parameters<ImportFile['look']> {
  if (taken === null) return [{ headerRow: null, delimiter: null, encoding: null }, null]
  const { sheet: named, ...rest } = taken
  const sheet = view.sheets.find(({ name }) => name === named)?.name ?? view.sheet
  const { headerRow, delimiter = null, encoding = null } = taken
  return [{ sheet, headerRow, delimiter, encoding }, sheet === null ? rest : { ...rest, sheet }]
}

function Remarks({ children }: { children: readonly ReactNode[] }) {
  return children.length === 0 ? null : <ul className="import-remarks">{children}</ul>
}

/** Tries the mapping, and brings the blocks in for good once it was tried. */
function Go({ file, gap }: { file: ImportFile; gap: string | null }) {
  const [by, setBy] = useState(useSigner())
  const [asked, setAsked] = useState(false)
  const isTried = file.answer?.summary.dryRun === true
  const fresh = isTried ? file.answer!.summary.new : 0

  function bringIn(): void {
    setAsked(true)
    if (by.trim() === '' || fresh === 0 || file.doing !== null) return
    rememberSigner(by)
    void file.bringIn(by.trim())
  }

  return (
    <section className="import-go" aria-label="Try and import">
      {gap === null ? null : <p className="quiet">{gap}</p>}
      <div className="import-options">
        <button
          type="button"
          className={isTried ? 'button' : 'button button-primary'}
          aria-disabled={gap !== null || file.doing !== null}
          onClick={() => {
            if (gap === null && file.doing === null) void file.attempt()
          }}
        >
          Try it, without storing
        </button>
        {fresh === 0 ? null : (
          <>
            <Field
              label="Name or initials"
              required
              value={by}
              maxLength={200}
              error={asked && by.trim() === '' ? askForName : null}
              onChange={(event) => setBy(event.currentTarget.value)}
            />
            <button
              type="button"
              className="button button-primary"
              aria-disabled={file.doing !== null}
              onClick={bringIn}
            >
              Import for good
            </button>
          </>
        )}
      </div>
      <ImportProgress file={file} />
      <Notice trouble={file.error} />
    </section>
  )
}
