import * as z from 'zod'

const text = z.string()
const byName = z.record(text, text)
const system = z.enum(['SI', 'US'])
const ownTexts = z.strictObject({
  ...{ count: text, numbers: text, adhesive: text, jointType: text, exposure: text, bondLineGapMm: text },
  ...{ wood: text, board: text },
})
const glueUpTexts = z.strictObject({
  ...{ gluedOn: text, temperatureC: text, humidityPercent: text, spreadGPerM2: text, openTimeMin: text },
  ...{ clampTimeMin: text, pressureMPa: text, woodMoisturePercent: text, people: text, notes: text },
  ...{ lots: byName, places: byName },
})

/**
 * A glue-up that was begun and not stored, as a page keeps it on this computer: of which study and archive, which blocks, and
 * all that was typed.
 */
export const glueUpDraft = z.strictObject({
  archive: text,
  studyId: z.number().nullable(),
  series: z.array(z.tuple([text, text])),
  ages: z.array(z.number().nullable()).nullable(),
  own: z.strictObject({ texts: ownTexts, typedIn: z.partialRecord(ownTexts.keyof(), system) }),
  texts: z.strictObject({ texts: glueUpTexts, typedIn: z.partialRecord(glueUpTexts.keyof(), system) }),
  cells: z.record(text, z.strictObject({ text, typedIn: system })),
})

export type GlueUpDraft = z.infer<typeof glueUpDraft>
