import { useState } from 'react'
import type { ClimateLimits } from '#contract/findings/climate.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Field } from '../../../widgets/Field.tsx'
import { type LimitName, readLimit } from './limitTexts.ts'

const labels: Readonly<Record<LimitName, string>> = {
  temperatureBelowC: 'Cold below',
  temperatureAboveC: 'Warm above',
  humidityBelowPercent: 'Dry below',
  humidityAbovePercent: 'Damp above',
}
const names = Object.keys(labels) as LimitName[]

/** The limits beyond which hours are counted; each acts when its field is left. */
export function LimitFields({ limits, onLimits }: { limits: ClimateLimits; onLimits(limits: ClimateLimits): void }) {
  const { temperature } = useQuantities()
  const [texts, setTexts] = useState<Partial<Record<LimitName, string>>>({})
  const [errors, setErrors] = useState<Partial<Record<LimitName, string>>>({})
  const shown = (name: LimitName) =>
    name.startsWith('temperature')
      ? String(Number((limits[name] * temperature.factor + (temperature.zeroAt ?? 0)).toFixed(1)))
      : String(limits[name])
  const act = (name: LimitName) => {
    const text = texts[name]
    if (text === undefined) return
    const read = readLimit(name, text, temperature)
    setErrors((before) => ({ ...before, [name]: 'error' in read ? read.error : undefined }))
    if ('error' in read) return
    setTexts((before) => ({ ...before, [name]: undefined }))
    if (read.limit !== limits[name]) onLimits({ ...limits, [name]: read.limit })
  }
  return (
    <section className="climate-limits" aria-label="Hours are counted beyond">
      <h2>Hours are counted beyond</h2>
      <div className="climate-picks">
        {names.map((name) => (
          <Field
            key={name}
            label={labels[name]}
            unit={name.startsWith('temperature') ? temperature.unit : '% RH'}
            value={texts[name] ?? shown(name)}
            error={errors[name]}
            onChange={(event) => {
              const { value } = event.currentTarget
              setTexts((before) => ({ ...before, [name]: value }))
            }}
            onBlur={() => act(name)}
            onKeyDown={(event) => event.key === 'Enter' && act(name)}
          />
        ))}
      </div>
    </section>
  )
}
