import { Trouble } from '#contract/errors.ts'
import type { Handlers } from '#contract/procedures.ts'
import type { BreakingMember, BreakingRecord, BreakingRow } from '#contract/programme/breakingProcedures.ts'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import { nextRunnings } from '#tests/fakes/programme/nextRunnings.ts'
import { breakingMember } from '../breakingMembers.ts'

const numbers = nextRunnings(1320, 24).map((running) => labelOf(running)!)
const title = 'Which glue to teach: loft and bilge, 6 months'

/** Twenty-four blocks of two groups: most broke, one was set aside, two were passed over, three wait. */
function members(): BreakingMember[] {
  return numbers.map((number, at): BreakingMember => {
    const fields = { number, adhesive: at % 2 === 0 ? 'casein C1' : 'resorcinol R2', exposure: 'loft', demo: true }
    const strengthMPa = at >= 19 ? null : at === 6 ? 3.1 : (at % 2 === 0 ? 7.6 : 11.2) + ((at * 7) % 5) / 5
    const member = breakingMember(at + 1, strengthMPa, {
      ...{ fields: { ...fields, jointType: 'long grain to long grain' }, ageMonths: 6, spares: at % 3 },
      summary: {
        ...{ number, demo: true, simulated: true, woodFailurePercent: at === 5 ? null : 10 * (at % 9) },
        ...(at === 9 ? { setAside: 'slipped in the fixture' } : {}),
        ...(at === 11 ? { flags: ['gap-at-peak' as const] } : {}),
      },
    })
    const skipped = { recordedAt: '2026-10-20T09:40:00.000Z', by: 'bench 1', note: 'glue on the bearing face' }
    if (at === 19 || at === 20) return { ...member, state: 'skipped', skipped }
    if (at === 3)
      return {
        ...member,
        breaks: [{ ...member.breaks[0]!, events: [{ kind: 'pop-in', percentOfPeak: 62 }] }],
      }
    return member
  })
}

const row: BreakingRow = {
  ...{ breakingSessionId: 1, startedAt: '2026-10-20T09:00:00.000Z', by: 'bench 1', title, pulls: [] },
  ...{ specimenIds: numbers.map((_, at) => at + 1), endedAt: null, broken: 19, skipped: 2, withdrawn: 0 },
}
const record = (): BreakingRecord => ({ ...row, members: members() })

const pull = (ageMonths: number, state: PullSummary['state'], dueOn: string, waiting: number): PullSummary => ({
  ...{ studyId: 1, gluedOn: '2026-04-20', ageMonths, key: `1-0-${ageMonths}`, sequence: 0, demo: true },
  ...{ studyTitle: 'Which glue to teach: loft and bilge', plannedOn: dueOn, dueOn, windowDays: 7, state },
  ...{ added: false, decision: null, blocks: { planned: 24, waiting, broken: 24 - waiting, lost: 0 } },
})

/** Breaking sessions kept in memory. */
export function scriptedBreaking(): Partial<Handlers> {
  return {
    'breaking.list': async () => [
      row,
      {
        ...row,
        ...{ breakingSessionId: 2, title: 'Which glue to teach: loft and bilge, at once', broken: 24, skipped: 0 },
        ...{ startedAt: '2026-05-04T08:00:00.000Z', endedAt: '2026-05-04T15:30:00.000Z' },
      },
    ],
    'breaking.get': async ({ breakingSessionId }) => {
      if (breakingSessionId > 2) throw new Trouble('not-found', 'There is no such session.', 'Go back to the list.')
      return record()
    },
    'breaking.begin': async () => row,
    'breaking.end': async () => ({ ...row, endedAt: '2026-10-20T12:00:00.000Z' }),
    'breaking.reopen': async () => row,
    'pulls.list': async () => ({
      today: '2026-10-20',
      filling: false,
      pulls: [
        pull(6, 'due', '2026-10-20', 24),
        pull(3, 'missed', '2026-07-20', 2),
        pull(12, 'planned', '2027-04-20', 24),
      ],
    }),
    'pulls.blocks': async ({ pulls }) =>
      pulls.map(({ ageMonths }) =>
        ['casein C1', 'epoxy E4'].flatMap((adhesive) =>
          ['bilge', 'loft'].map((exposure) => ({
            ...{ adhesive, jointType: 'long grain to long grain', gapMm: 0, exposure },
            ...{ place: `shelf ${exposure === 'loft' ? 2 : 1}`, blocks: ageMonths === 3 ? 1 : 6 },
          })),
        ),
      ),
    'numbers.find': async ({ number }) => ({ kind: 'specimen', specimenId: 4, number }),
  }
}
