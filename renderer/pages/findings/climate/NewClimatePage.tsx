import { useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { ClimateOutcome, ClimateProposal } from '#contract/findings/climateAnswers.ts'
import { refuseLargeLoggerFile } from '#contract/findings/climateProcedures.ts'
import { askForName } from '#words/settings/signatureWords.ts'
import { useAction } from '../../../host/useAction.ts'
import { CatalogueField } from '../../../parts/catalogue/CatalogueField.tsx'
import { rememberSigner, useSigner } from '../../../parts/decisions/signer.ts'
import { TaskProgress } from '../../../parts/decisions/TaskProgress.tsx'
import { FileChoice } from '../../../parts/files/FileChoice.tsx'
import { readFile } from '../../../parts/files/readFile.ts'
import { hashOf } from '../../../routes/route.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Field, SelectField } from '../../../widgets/Field.tsx'
import { Form } from '../../../widgets/forms/Form.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { MappingFields } from './MappingFields.tsx'
import { type MappingTexts, mappingOf, missingIn, proposedTexts } from './mappingForm.ts'
import { OutcomeSection } from './OutcomeSection.tsx'
import './climate.css'

type Chosen = { fileName: string; content: Uint8Array<ArrayBuffer> }

/** Brings the file of a logger in: what its columns mean, where it hung, what every row becomes, and then the readings. */
export function NewClimatePage() {
  const propose = useAction('climate.propose')
  const [file, setFile] = useState<Chosen | null>(null)
  const [found, setFound] = useState<ClimateProposal | null>(null)
  const [refused, setRefused] = useState<TroubleMessage | null>(null)

  async function look(chosen: Chosen, said: { sheet: string | null; headerRow: number | null }) {
    setFile(chosen)
    setFound(await propose.run({ ...chosen, ...said }))
  }

  async function choose(given: File) {
    setRefused(null)
    try {
      refuseLargeLoggerFile(given.name, given.size)
      const { name: fileName, content } = await readFile(given)
      await look({ fileName, content }, { sheet: null, headerRow: null })
    } catch (thrown) {
      setRefused(troubleFrom(thrown))
    }
  }

  return (
    <div className="plain-page climate-page">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'climate' })}>Store climate</a>
          </p>
          <h1>{file?.fileName ?? 'Bring in a logger file'}</h1>
        </div>
      </header>
      <FileChoice
        label="File of the logger"
        what="The readings of a logger"
        name={file?.fileName ?? null}
        isBusy={propose.pending}
        onFile={(given) => void choose(given)}
      />
      <Notice trouble={refused ?? propose.error} />
      {file === null || found === null ? null : (
        <>
          <WhereItStands
            found={found}
            onLook={(said) => void look(file, { sheet: found.sheet, headerRow: found.headerRow, ...said })}
          />
          <ReadingForm key={`${file.fileName} ${found.sheet} ${found.headerRow}`} file={file} found={found} />
        </>
      )}
    </div>
  )
}

/** The sheet and the row of headings, where the first look was wrong. */
function WhereItStands({
  found,
  onLook,
}: {
  found: ClimateProposal
  onLook(said: { sheet?: string; headerRow?: number }): void
}) {
  return (
    <div className="climate-picks">
      {found.sheets.length < 2 ? null : (
        <SelectField
          label="Sheet"
          value={found.sheet ?? ''}
          onChange={(event) => onLook({ sheet: event.currentTarget.value })}
        >
          {found.sheets.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </SelectField>
      )}
      <Field
        label="Row of the headings"
        inputMode="numeric"
        hint="0: there are none."
        defaultValue={String(found.headerRow)}
        key={found.headerRow}
        onBlur={(event) => {
          const row = Number(event.currentTarget.value)
          if (Number.isInteger(row) && row >= 0 && row !== found.headerRow) onLook({ headerRow: row })
        }}
      />
    </div>
  )
}

const kinds = [
  { value: 'exposure', label: 'an exposure' },
  { value: 'place', label: 'a place on the shelf' },
] as const

function ReadingForm({ file, found }: { file: Chosen; found: ClimateProposal }) {
  const attempt = useAction('climate.try')
  const bring = useAction('climate.import')
  const signer = useSigner()
  const [texts, setTexts] = useState<MappingTexts>(() => proposedTexts(found))
  const [kind, setKind] = useState<'place' | 'exposure'>('exposure')
  const [name, setName] = useState('')
  const [by, setBy] = useState(signer)
  const [asked, setAsked] = useState(false)
  const [outcome, setOutcome] = useState<ClimateOutcome | null>(null)
  const missing = asked ? missingIn(texts, found) : {}
  const noName = name.trim() === ''
  const pending = attempt.pending || bring.pending

  function change(part: Partial<MappingTexts>) {
    setOutcome(null)
    setTexts((before) => ({ ...before, ...part }))
  }

  async function submit(what: string): Promise<boolean> {
    setAsked(true)
    const mapping = mappingOf(texts, found)
    const signed = what !== 'import' || by.trim() !== ''
    if (mapping === null || Object.keys(missingIn(texts, found)).length > 0 || noName || !signed) return false
    const wanted = { ...file, mapping, store: { kind, name: name.trim() } }
    if (what === 'import') rememberSigner(by)
    const came = what === 'import' ? await bring.run({ ...wanted, by }) : await attempt.run(wanted)
    setOutcome(came)
    return came !== null
  }

  return (
    <Form onSubmit={submit} className="form climate-form" focusFirst={false}>
      {found.kept === null ? null : (
        <p className="quiet">An earlier file had the same columns; they are read as they were read then.</p>
      )}
      <MappingFields found={found} texts={texts} wrong={missing} onTexts={change} />
      <fieldset className="climate-mapping">
        <legend>Where the logger hung</legend>
        <div className="climate-picks">
          <Choice label="Blocks know it as" options={kinds} value={kind} onChange={(next) => setKind(next)} />
          <CatalogueField
            kind={kind}
            label="Name of the store"
            required
            value={name}
            error={asked && noName ? 'Name the place or the exposure at which the logger hung.' : null}
            onValue={(value) => {
              setOutcome(null)
              setName(value)
            }}
          />
          <Field
            label="Name or initials"
            value={by}
            maxLength={200}
            error={asked && by.trim() === '' ? askForName : null}
            onChange={(event) => setBy(event.currentTarget.value)}
          />
        </div>
      </fieldset>
      <Notice trouble={bring.error ?? attempt.error} />
      <div className="dialog-buttons">
        <button type="submit" value="try" className="button" aria-disabled={pending}>
          Show what the rows become
        </button>
        <button type="submit" value="import" className="button button-primary" aria-disabled={pending}>
          {bring.pending ? 'Bringing in …' : 'Bring in'}
        </button>
      </div>
      {pending ? <TaskProgress task="climate" label="Bytes of the file that are read" /> : null}
      {outcome === null || (texts.unit !== 'C' && texts.unit !== 'F') ? null : (
        <OutcomeSection outcome={outcome} unit={texts.unit} />
      )}
      {outcome === null || outcome.dryRun ? null : (
        <p>
          <a href={hashOf({ page: 'climate' })}>See the climate of the store</a>
        </p>
      )}
    </Form>
  )
}
