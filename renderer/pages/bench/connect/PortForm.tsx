import { useState } from 'react'
import { ratedLoadWords } from '#words/bench/cautions.ts'
import { useBench, usePreferences } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { useForceTexts } from '../../../parts/bench/useForceTexts.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { Field } from '../../../widgets/Field.tsx'
import { Form } from '../../../widgets/forms/Form.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { HeardLines } from './HeardLines.tsx'
import { PortFields } from './PortFields.tsx'
import { usePort } from './usePort.ts'

/** A port, its speed, what it sends, and what a count is worth. */
export function PortForm() {
  const bench = useBench()
  const preferences = usePreferences()
  const { force, forcePerCount } = useQuantities()
  const port = usePort(preferences.source?.kind === 'serial' ? preferences.source : null)
  const texts = useForceTexts(preferences)
  const [asked, setAsked] = useState(false)
  const setPreferences = useAction('preferences.set')
  const connect = useAction('bench.connect')

  async function submit(): Promise<boolean> {
    setAsked(true)
    if (port.chosen === '' || texts.read === null) return false
    if ((await setPreferences.run(texts.read)) === null) return false
    const isOpen = (await connect.run({ source: port.source() })) !== null
    if (isOpen) go({ page: 'bench' })
    return isOpen
  }

  return (
    <Form className="form port-form" onSubmit={submit}>
      <div className="port-columns">
        <PortFields port={port} asked={asked} />
        <section aria-labelledby="worth-title">
          <h2 id="worth-title">Load and scale</h2>
          <Field
            label={ratedLoadWords}
            unit={force.unit}
            value={texts.capacity}
            onChange={(event) => texts.setCapacity(event.currentTarget.value)}
            error={asked ? texts.errors.capacity : null}
            hint="The program warns above 90 % and sounds an alarm above 100 %."
          />
          <Field
            label="Scale"
            unit={forcePerCount.unit}
            value={texts.scale}
            onChange={(event) => texts.setScale(event.currentTarget.value)}
            error={asked ? texts.errors.scale : null}
            hint="Leave empty if not known: the curve is then kept in counts. A typed scale is marked uncalibrated wherever force is shown."
          />
          <HeardLines heard={port.heard} pending={port.listening} />
        </section>
      </div>
      <Notice trouble={port.error ?? setPreferences.error ?? connect.error ?? bench.connection.problem} />
      <div className="form-buttons">
        <button type="submit" className="button button-primary button-large" aria-disabled={connect.pending}>
          {connect.pending ? 'Connecting …' : 'Connect'}
        </button>
      </div>
    </Form>
  )
}
