import type { Page } from 'playwright-core'
import type { ReevaluationDecision, ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { scriptedChanges } from '#tests/fakes/scripted/scriptedReevaluation.ts'
import { at, type Screen, settle } from './screenSteps.ts'

function host(preferences: Parameters<typeof createScriptedHost>[0] = {}): ScriptedHost {
  const made = createScriptedHost(preferences)
  made.calibration.withCalibrations()
  for (let i = 0; i < 12; i++) {
    made.setBench({ specimen: made.specimens[i]! })
    made.addBreak(4310 + ((i * 731) % 1900))
  }
  return made
}

const decision = (kind: ReevaluationDecision['kind'], reason: string, number = 1): ReevaluationDecision => ({
  reevaluationDecisionId: number,
  reevaluationId: 1,
  recordedAt: `2026-06-0${2 + number}T08:30:00.000Z`,
  by: 'bench 1',
  reason,
  kind,
})
const adopted = decision('adopted', 'looked through the changes, none against expectation')
const takenOut = decision('dropped', 'the fall was set too low for the casein blocks', 2)

const end = (
  ending: 'complete' | 'cancelled' | 'cut-short',
  problems: NonNullable<ReevaluationSummary['end']>['problems'] = [],
) => ({ reevaluationId: 1, endedAt: '2026-06-02T09:31:00.000Z', ending, problems })

const otherUnit = Array.from({ length: 30 }, (_, index) => ({
  breakId: 90 + index,
  message: `Calibration 2 is for readings in counts; those of break ${90 + index} are in N.`,
}))

function one(change: Partial<ReevaluationSummary>, results = 240, preferences = {}): () => ScriptedHost {
  return () => {
    const made = host(preferences)
    made.reevaluation.changes.push(...scriptedChanges(results))
    made.reevaluation.add({ breaks: results, evaluated: results, ...change })
    return made
  }
}

async function fill(page: Page, label: string, text: string): Promise<void> {
  await page.getByLabel(label).first().fill(text)
}

const dialog = (name: string, button: string, change: Partial<ReevaluationSummary>): Screen => ({
  name,
  host: one(change),
  show: async (page) => {
    await at('#/reevaluations/1')(page)
    await page.getByRole('button', { name: button }).click()
    await page.locator('dialog').getByRole('button').last().click()
    await settle(page)
  },
})

/** Evaluating again, from the choice of breaks to the decision, in every state. */
export const reevaluationScreens: readonly Screen[] = [
  { name: 'reevaluations-none', host: () => host(), show: at('#/reevaluations') },
  {
    name: 'reevaluations-list',
    host: () => {
      const made = host()
      const { add } = made.reevaluation
      add({ breaks: 1, evaluated: 1, decisions: [decision('dropped', 'was only a trial')] })
      add({
        breaks: 812,
        evaluated: 812,
        calibrationId: 2,
        end: end('complete', otherUnit),
        decisions: [adopted, takenOut],
      })
      add({ breaks: 2400, evaluated: 611, end: end('cancelled') })
      add({ breaks: 2400, evaluated: 1730, end: end('cut-short'), by: 'bench 2' })
      add({ breaks: 2400, evaluated: 2400, decisions: [adopted] })
      add({ settings: { breakDropShare: 0.3, breakDropWithinS: 0.4 } })
      add({ breaks: 5000, evaluated: 312, end: null, settings: { pressSpeedMmPerS: 0.1 } })
      return made
    },
    show: at('#/reevaluations'),
  },
  { name: 'reevaluation-new', host: () => host(), show: at('#/reevaluations/new') },
  {
    name: 'reevaluation-new-one',
    host: () => host(),
    show: async (page) => {
      await at('#/reevaluations/new/5')(page)
      await page.getByLabel('Calibration to use').selectOption({ index: 1 })
      await fill(page, 'Fall of at least', '30')
      await fill(page, 'Press speed', '6')
      await settle(page)
    },
  },
  {
    name: 'reevaluation-new-wrong',
    host: () => host({ preferences: { units: 'US', operator: '' } }),
    show: async (page) => {
      await at('#/reevaluations/new')(page)
      await page.getByLabel('Search breaks').fill('no such adhesive')
      await fill(page, 'Fall of at least', '130')
      await fill(page, 'Rated load, in', 'four')
      await fill(page, 'Highest code', '8388607')
      await page.getByRole('button', { name: 'Evaluate again', exact: true }).click()
      await settle(page)
    },
  },
  {
    name: 'reevaluation-running',
    host: one({ breaks: 5000, evaluated: 0, end: null }),
    show: async (page, made) => {
      await at('#/reevaluations/1')(page)
      made.reevaluation.advance(1874)
      await settle(page)
    },
  },
  {
    name: 'reevaluation-behind-bench',
    host: one({ breaks: 5000, evaluated: 0, end: null }),
    show: async (page, made) => {
      await at('#/breaks')(page)
      made.reevaluation.advance(3212)
      await settle(page)
    },
  },
  {
    name: 'reevaluation-waiting',
    host: one({ calibrationId: 2, breaks: 270, settings: { breakDropShare: 0.3 }, end: end('complete', otherUnit) }),
    show: at('#/reevaluations/1'),
  },
  {
    name: 'reevaluation-waiting-us',
    host: one({}, 5000, { preferences: { units: 'US' } }),
    show: async (page) => {
      await at('#/reevaluations/1')(page)
      await page.getByRole('radio', { name: 'All', exact: true }).check({ force: true })
      await settle(page)
    },
  },
  { name: 'reevaluation-adopted', host: one({ decisions: [adopted] }), show: at('#/reevaluations/1') },
  { name: 'reevaluation-taken-out', host: one({ decisions: [adopted, takenOut] }), show: at('#/reevaluations/1') },
  {
    name: 'reevaluation-dropped',
    host: one({ decisions: [decision('dropped', 'was only a trial')] }),
    show: at('#/reevaluations/1'),
  },
  {
    name: 'reevaluation-cancelled',
    host: one({ breaks: 2400, evaluated: 240, end: end('cancelled') }),
    show: at('#/reevaluations/1'),
  },
  {
    name: 'reevaluation-cut-short-at-once',
    host: one({ breaks: 2400, evaluated: 0, end: end('cut-short') }, 0),
    show: at('#/reevaluations/1'),
  },
  {
    name: 'reevaluation-nothing-changed',
    host: () => {
      const made = one({}, 0)()
      Object.assign(made.reevaluation.reevaluations[0]!, { breaks: 12, evaluated: 12 })
      made.reevaluation.changes.push(
        ...scriptedChanges(60)
          .filter(({ changed }) => !Object.values(changed).includes(true))
          .slice(0, 12),
      )
      return made
    },
    show: at('#/reevaluations/1'),
  },
  {
    name: 'reevaluation-nothing',
    host: one({ breaks: 30, evaluated: 0, end: end('complete', otherUnit) }, 0),
    show: at('#/reevaluations/1'),
  },
  dialog('reevaluation-adopt', 'Adopt these results', {}),
  dialog('reevaluation-take-out', 'Take out of force again', { decisions: [adopted] }),
]
