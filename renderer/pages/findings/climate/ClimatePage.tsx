import { type ReactNode, useState } from 'react'
import {
  type ClimateImportSummary,
  type ClimateLimits,
  type ClimateStore,
  climateLimits,
} from '#contract/findings/climate.ts'
import type { ClimateOfStore, StoredSeries } from '#contract/findings/climateAnswers.ts'
import { madeAlike } from '#words/breaks/groupName.ts'
import { storeName } from '#words/findings/climate/climateWords.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'
import { SelectField } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { ClimateFigures } from './ClimateFigures.tsx'
import { ClimateImports } from './ClimateImports.tsx'
import { ClimateYears } from './ClimateYears.tsx'
import { keyOfStore, storesOf } from './climateStores.ts'
import { LimitFields } from './LimitFields.tsx'
import { useClimateOrigin } from './useClimateOrigin.ts'
import './climate.css'

/** What air the blocks in a store lay in, and beside it how strong they were. */
export function ClimatePage() {
  const imports = useAnswer('climate.imports', {})
  const [chosen, setChosen] = useState('')
  const [limits, setLimits] = useState<ClimateLimits>(climateLimits.parse({}))
  const stores = storesOf(imports.value ?? [])
  const store = stores.find((one) => keyOfStore(one) === chosen) ?? stores[0] ?? null
  return (
    <div className="plain-page climate-page">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'findings' })}>Findings</a>
          </p>
          <h1>Store climate</h1>
        </div>
        <div className="record-buttons">
          <a className="button button-primary" href={hashOf({ page: 'new-climate' })}>
            Bring in a logger file
          </a>
        </div>
      </header>
      <Notice trouble={imports.error} />
      {imports.value !== null && store === null ? (
        <p className="empty-words">
          No logger file was brought in yet. A logger that hangs where blocks lie says what they went through.
        </p>
      ) : null}
      {store === null ? null : (
        <Store store={store} imports={imports.value ?? []} limits={limits} onLimits={setLimits}>
          <StoreChoice stores={stores} store={store} onStore={setChosen} />
        </Store>
      )}
      <ClimateImports imports={imports.value ?? []} />
    </div>
  )
}

function StoreChoice({
  stores,
  store,
  onStore,
}: {
  stores: readonly ClimateStore[]
  store: ClimateStore
  onStore(key: string): void
}) {
  return (
    <SelectField label="Store" value={keyOfStore(store)} onChange={(event) => onStore(event.currentTarget.value)}>
      {stores.map((one) => (
        <option key={keyOfStore(one)} value={keyOfStore(one)}>
          {storeName(one)}
        </option>
      ))}
    </SelectField>
  )
}

type View = {
  imports: readonly ClimateImportSummary[]
  limits: ClimateLimits
  onLimits(limits: ClimateLimits): void
  children: ReactNode
}

/** `children`: the choice of the store. */
function Store({ store, children, ...view }: { store: ClimateStore } & View) {
  const { value, error, pending } = useAnswer('climate.of', { store, limits: view.limits })
  const found = value !== null && keyOfStore(value.store) === keyOfStore(store) ? value : null
  return (
    <>
      <Notice trouble={error} />
      {pending && found === null ? (
        <p className="quiet" role="status">
          Working out the climate
        </p>
      ) : null}
      {found === null ? (
        <div className="climate-picks">{children}</div>
      ) : (
        <Shown found={found} {...view}>
          {children}
        </Shown>
      )}
    </>
  )
}

function Shown({ found, imports, limits, onLimits, children }: { found: ClimateOfStore } & View) {
  const { length } = useQuantities()
  const [key, setKey] = useState('')
  const { climate, series, simulated, toCome } = found
  const origin = useClimateOrigin(found, imports)
  const shown = series.find((one) => one.key === key) ?? series[0] ?? null
  const name = (one: StoredSeries) => madeAlike(one, length.text)
  return (
    <>
      <div className="climate-picks">
        {children}
        {shown === null || climate === null ? null : (
          <SelectField
            label="Strength beside it"
            value={shown.key}
            onChange={(event) => setKey(event.currentTarget.value)}
          >
            {series.map((one) => (
              <option key={one.key} value={one.key}>
                {name(one)}
              </option>
            ))}
          </SelectField>
        )}
      </div>
      {climate === null ? (
        <p className="empty-words">Every logger file of this store is set aside.</p>
      ) : (
        <>
          {simulated ? <p className="climate-mark">Readings of this store: {simulatedMark}.</p> : null}
          {shown === null ? <p className="quiet">No block that lies here was broken yet.</p> : null}
          <ClimateFigures
            climate={climate}
            store={storeName(found.store)}
            origin={origin}
            series={shown}
            toCome={toCome}
            name={shown === null ? '' : name(shown)}
          />
          <LimitFields limits={limits} onLimits={onLimits} />
          <ClimateYears climate={climate} limits={limits} />
        </>
      )}
    </>
  )
}
