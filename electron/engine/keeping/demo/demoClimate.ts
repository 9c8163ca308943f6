import { createHash } from 'node:crypto'
import type { Archive } from '#archive/archive.ts'
import { climateMapping } from '#contract/findings/climate.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { dayOf } from '#domain/programme/calendar/calendarDay.ts'
import { readLogger } from '#exchange/climate/readLogger.ts'
import { demoAuthor } from './demoStudy.ts'

const fileName = 'sail-loft-logger-invented.csv'
const secondsPerDay = 86_400
/** A reading every four hours, from so many days before the study on. */
const stepS = 14_400
const daysBefore = 60
/** The battery was empty for so long, so many days after the study began. */
const withoutBattery = { fromDay: 24, toDay: 29 } as const

const mapping = climateMapping.parse({
  time: { column: 'Time', dateFormat: 'YYYY-M-D' },
  timeZone: 'UTC',
  temperature: { column: 'Temperature (°C)', unit: 'C' },
  humidity: { column: 'RH (%)' },
})

/** What a logger in the sail loft would have written: warm and dry in summer, frost in winter, days and nights. All of it invented. */
export function demoLoggerFile(startOn: string, today: string): string {
  const random = createRandom(1, 104)
  const first = (dayOf(startOn) - daysBefore) * secondsPerDay
  const lines = ['Time,Temperature (°C),RH (%)']
  for (let timeS = first; timeS < dayOf(today) * secondsPerDay; timeS += stepS) {
    const days = timeS / secondsPerDay
    const sinceStart = days - dayOf(startOn)
    const [year, night] = [Math.cos((2 * Math.PI * (days - 200)) / 365.25), Math.cos(2 * Math.PI * (days - 0.6))]
    const weather = 3 * Math.sin(days / 3.3) + 2 * Math.sin(days / 1.9)
    const temperature = 9 + 9 * year + 3.5 * night + weather + 0.4 * random.normal()
    const humidity = 72 - 9 * year - 7 * night - 1.6 * weather + 1.5 * random.normal()
    if (sinceStart >= withoutBattery.fromDay && sinceStart < withoutBattery.toDay) continue
    const written = new Date(timeS * 1000).toISOString().slice(0, 16).replace('T', ' ')
    lines.push(`${written},${temperature.toFixed(1)},${Math.max(20, Math.min(99, humidity)).toFixed(1)}`)
  }
  return `${lines.join('\n')}\n`
}

/** Brings the invented file of the logger in, as a person would; what is there already is not brought in twice. */
export async function hangDemoLogger(
  archive: Pick<Archive, 'storeReadings'>,
  startOn: string,
  today: string,
  signal: AbortSignal,
): Promise<void> {
  const content = Buffer.from(demoLoggerFile(startOn, today))
  const file = await readLogger(fileName, content, mapping, dayOf(today) * secondsPerDay, () => {}, signal)
  const { timeS, temperature, humidityPercent } = file.readings
  await archive.storeReadings(() => {}, signal, {
    store: { kind: 'exposure', name: 'loft' },
    readings: { timeS, temperature, humidityPercent },
    said: {
      ...{ recordedAt: `${startOn}T08:00:00.000Z`, by: demoAuthor, fileName, rejected: file.rejectedCount },
      ...{ fileSha256: createHash('sha256').update(content).digest('hex'), simulated: true },
      ...{ mapping: JSON.parse(JSON.stringify(mapping)), temperatureUnit: mapping.temperature.unit },
    },
  })
}
