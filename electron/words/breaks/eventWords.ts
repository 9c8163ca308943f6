import type { CurveEvent } from '#contract/breaks/evaluation.ts'

/** What an event of a curve is called. */
export const eventNames: Record<CurveEvent['kind'], string> = {
  'pop-in': 'Pop-in',
  'stick-slip': 'Stick-slip',
  glitch: 'Electrical spike',
  gap: 'Missing samples',
  clipping: 'Clipping',
  seating: 'Seating',
  plateau: 'Plateau',
  hold: 'Hold',
  reload: 'Loaded again',
  'final-drop': 'Final drop',
}
