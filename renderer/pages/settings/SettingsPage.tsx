import { useState } from 'react'
import type { Preferences } from '#contract/settings/settings.ts'
import { ratedLoadWords } from '#words/bench/cautions.ts'
import { handsFreeName } from '#words/bench/queueWords.ts'
import { usePreferences } from '../../host/hostContext.ts'
import { type Action, useAction } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { playCue } from '../../parts/bench/benchSound.ts'
import { useForceTexts } from '../../parts/bench/useForceTexts.ts'
import { CautionsDialog } from '../../parts/cautions/CautionsDialog.tsx'
import { singleKeys } from '../../parts/routing/singleKeys.ts'
import { hashOf } from '../../routes/route.ts'
import { Choice } from '../../widgets/Choice.tsx'
import { Field } from '../../widgets/Field.tsx'
import { Form } from '../../widgets/forms/Form.tsx'
import { Notice } from '../../widgets/Notice.tsx'
import { Switch } from '../../widgets/Switch.tsx'
import { PracticeSettings } from './PracticeSettings.tsx'
import { PressSpeedForm } from './PressSpeedForm.tsx'
import './settings.css'
import { rememberSigner } from '../../parts/decisions/signer.ts'

const units = [
  { value: 'SI', label: 'SI: N, mm, MPa' },
  { value: 'US', label: 'US customary: lbf, in, psi' },
] as const
const themes = [
  { value: 'system', label: 'Same as system' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
] as const

/** What the program remembers for its user. Everything acts at once. */
export function SettingsPage() {
  const preferences = usePreferences()
  const set = useAction('preferences.set')
  const [keysOn, setKeysOn] = useState(singleKeys.on)
  const [cautions, setCautions] = useState(false)
  return (
    <div className="plain-page settings">
      <h1>Settings</h1>
      <Notice trouble={set.error} onDismiss={set.dismiss} />
      <div className="settings-columns">
        <section aria-labelledby="look-title">
          <h2 id="look-title">Screen and sound</h2>
          <Choice
            label="Units"
            options={units}
            value={preferences.units}
            onChange={(value) => void set.run({ units: value })}
          />
          <Choice
            label="Theme"
            options={themes}
            value={preferences.theme}
            onChange={(value) => void set.run({ theme: value })}
          />
          <Switch
            label="Sound at loading, break and overload"
            on={preferences.sound}
            onChange={(sound) => {
              if (sound) playCue('broke')
              void set.run({ sound })
            }}
          />
          <Switch
            label="Single keys as shortcuts"
            on={keysOn}
            onChange={(on) => {
              singleKeys.set(on)
              setKeysOn(on)
            }}
          />
        </section>
        <section aria-labelledby="work-title">
          <h2 id="work-title">Work</h2>
          <OperatorForm preferences={preferences} set={set} />
          <Switch
            label={handsFreeName}
            on={preferences.handsFree}
            onChange={(handsFree) => void set.run({ handsFree })}
          />
          <button type="button" className="button" onClick={() => setCautions(true)}>
            Read the cautions
          </button>
        </section>
        <section aria-labelledby="force-title">
          <h2 id="force-title">Force</h2>
          <ForceForm preferences={preferences} set={set} />
        </section>
      </div>
      <div className="settings-columns settings-practices">
        <section aria-labelledby="practices-title">
          <h2 id="practices-title">Test practices</h2>
          <PracticeSettings preferences={preferences} set={set} />
        </section>
        <section aria-labelledby="detection-title">
          <h2 id="detection-title">Press</h2>
          <PressSpeedForm preferences={preferences} set={set} />
        </section>
      </div>
      <p>
        <a href={hashOf({ page: 'licences' })}>Licences of Breakledger and of what it is made of</a>
      </p>
      {cautions ? <CautionsDialog first={false} onClose={() => setCautions(false)} /> : null}
    </div>
  )
}

type Part = { preferences: Preferences; set: Action<'preferences.set'> }

function OperatorForm({ preferences, set }: Part) {
  const [operator, setOperator] = useState(preferences.operator)
  const changed = operator.trim() !== preferences.operator
  return (
    <Form
      className="setting-line"
      focusFirst={false}
      onSubmit={async () => {
        rememberSigner(operator)
        return (await set.run({ operator: operator.trim() })) !== null
      }}
    >
      <Field
        label="Your name or initials"
        value={operator}
        maxLength={200}
        hint="Written beside every entry and correction."
        onChange={(event) => setOperator(event.currentTarget.value)}
      />
      <button type="submit" className="button" aria-disabled={!changed}>
        Save
      </button>
    </Form>
  )
}

function ForceForm({ preferences, set }: Part) {
  const { force, forcePerCount } = useQuantities()
  const texts = useForceTexts(preferences)
  const [asked, setAsked] = useState(false)

  async function submit(): Promise<boolean> {
    setAsked(true)
    return texts.read !== null && (await set.run(texts.read)) !== null
  }

  return (
    <Form onSubmit={submit} focusFirst={false}>
      <Field
        label={ratedLoadWords}
        unit={force.unit}
        value={texts.capacity}
        onChange={(event) => texts.setCapacity(event.currentTarget.value)}
        error={asked ? texts.errors.capacity : null}
        hint="Warning above 90 %, alarm above 100 %."
      />
      <Field
        label="Scale, uncalibrated"
        unit={forcePerCount.unit}
        value={texts.scale}
        onChange={(event) => texts.setScale(event.currentTarget.value)}
        error={asked ? texts.errors.scale : null}
        hint="Used from the next break on; stored breaks keep the scale they were recorded with."
      />
      <div>
        <button type="submit" className="button" aria-disabled={!texts.changed}>
          Save
        </button>
      </div>
    </Form>
  )
}
