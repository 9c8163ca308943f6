import { paperShares, weibullPlot } from '#domain/findings/censored/weibullPlot.ts'
import { differenceCurve } from '#domain/programme/study/differenceCurve.ts'
import { comparedCurvesFigure } from '#figures/breaks/comparedCurvesFigure.ts'
import { sceneOf } from '#figures/breaks/curveScene.ts'
import { loadCurveFigure } from '#figures/breaks/loadCurveFigure.ts'
import { controlChart, controlChartOf } from '#figures/calibration/controlChart.ts'
import { driftFigure } from '#figures/calibration/driftFigure.ts'
import { residualFigure } from '#figures/calibration/residualFigure.ts'
import { stepErrorFigure } from '#figures/calibration/stepErrorFigure.ts'
import type { FigureSize } from '#figures/drawing/figure.ts'
import { type AgeingPicture, ageingFigure, ageingKeysFigure } from '#figures/findings/ageingFigure.ts'
import { ageingMultiples } from '#figures/findings/ageingMultiples.ts'
import { climatePanel } from '#figures/findings/climate/climatePanel.ts'
import { storedStrength } from '#figures/findings/climate/storedStrength.ts'
import { groupStrip, type StripGroup } from '#figures/findings/groupStrip.ts'
import { overallFigure } from '#figures/findings/overallFigure.ts'
import { rankFigure } from '#figures/findings/rankFigure.ts'
import { weibullFigure } from '#figures/findings/weibullFigure.ts'
import { woodStrengthFigure } from '#figures/findings/woodStrengthFigure.ts'
import { differenceFigure } from '#figures/programme/differenceFigure.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { madeEvent } from '../fakes/madeEvents.ts'
import { scriptedCurve, seededNumbers } from '../fakes/scripted/scriptedCurve.ts'
import { createScriptedHost } from '../fakes/scripted/scriptedHost.ts'
import { madeCompared } from './breaks/madeCompared.ts'
import { climateAxis, madePanel, madeSeries } from './findings/climate/madeClimate.ts'
import { madeOverviews } from './findings/overview/madeOverviews.ts'
import type { MadeFigure } from './madeFigure.ts'

const { force, strength } = quantitiesIn('SI')

/** Every kind of figure in an exact state; `name` stands wherever a person may have written one. */
export async function madeFigures(name: string): Promise<MadeFigure[]> {
  return [
    ...loadCurves(name),
    ...[12, 2].map((count) => ({
      name: `compared-${count}`,
      draw: (size: FigureSize) => comparedCurvesFigure(madeCompared(name, count), size),
    })),
    ...(await calibrationFigures(name)),
    ...strips(name),
    ...statistics(name),
    ...ageing(name),
    ...madeOverviews(name),
    ...plans(),
    ...climates(name),
  ]
}

function loadCurves(name: string): MadeFigure[] {
  const raw = scriptedCurve(3480, 8, 1000, 3)
  const gap = madeEvent({ kind: 'gap', startTimeS: 4.1, endTimeS: 4.4 })
  const inGap = (timeS: number) => timeS > gap.startTimeS && timeS < gap.endTimeS
  const kept = [...raw.timeS.keys()].filter((index) => !inGap(raw.timeS[index]!))
  const curve = {
    timeS: Float64Array.from(kept, (index) => raw.timeS[index]!),
    force: Float64Array.from(kept, (index) => raw.readings[index]!),
  }
  const events = [
    madeEvent({ kind: 'seating', startTimeS: 2, endTimeS: 2.6 }),
    gap,
    madeEvent({ kind: 'pop-in', startTimeS: 6.2, endTimeS: 6.21, dropN: 60, dropPercent: 2 }),
    madeEvent({ kind: 'pop-in', startTimeS: 6.4, endTimeS: 6.41, dropN: 60, dropPercent: 2 }),
    madeEvent({ kind: 'stick-slip', startTimeS: 6.6, endTimeS: 7.4, cycles: 4 }),
    madeEvent({ kind: 'plateau', startTimeS: 9.4, endTimeS: 9.98 }),
  ]
  const host = createScriptedHost()
  host.addBreak(3480, {}, { peakTimeS: 10, onsetTimeS: 2, breakTimeS: 10.001, noiseN: 1.5, events })
  const { result } = host.breaks[0]!.evaluations[0]!
  const course = { ...result.course, toe: { zeroTimeS: 2.55, slopeNPerS: 500 } } as typeof result.course
  const word = {
    overruled: { kind: 'peak-picked', by: name, reason: name, recordedAt: '', timeS: 6.19, foundPeakN: 3480 },
    peakN: 2100,
  } as const
  const shared = { curve, chosen: null, force: force.text, capacityN: 3600, seatedLine: true }
  const figure = (scene: ReturnType<typeof sceneOf>) => (size: FigureSize) =>
    loadCurveFigure(
      { title: `Load on ${name}`, curve, scene, shown: { name: 'load', unit: 'N', factor: 1 }, heightEm: 26 },
      size,
    )
  const plain = { ...result, events: [], course: null, noiseN: null }
  return [
    { name: 'load-curve', draw: figure(sceneOf({ ...shared, result: { ...result, course }, word })) },
    { name: 'load-curve-plain', draw: figure(sceneOf({ ...shared, result: plain, word: null, seatedLine: false })) },
  ]
}

async function calibrationFigures(name: string): Promise<MadeFigure[]> {
  const random = seededNumbers(5)
  const residuals = Array.from({ length: 39 }, (_, index) => {
    const step = index % 13
    const forceN = 93.3 * (step < 7 ? step : 12 - step)
    const direction = step < 7 ? ('up' as const) : ('down' as const)
    return { number: index + 1, run: 1 + Math.floor(index / 13), forceN, direction, residualN: random() - 0.5 }
  })
  const steps = [49, 98, 147, 245, 392, 559].map((forceN) => ({ forceN, q: 3 * random() - 1.5 }))
  const host = createScriptedHost()
  host.calibration.withChecks(24, 0.92)
  const [made] = (await host.handlers['checkWeight.history']({ calibrationId: null })).rows
  const history = { ...made!, weight: name }
  const series = Array.from({ length: 9 }, (_, year) => ({
    name,
    madeAt: `${2024 + year}-04-11T12:00:00.000Z`,
    slopePercent: random() / 5,
    zeroN: random() - 0.5,
  }))
  return [
    { name: 'residuals', draw: (size) => residualFigure({ residuals, soFar: false }, force, size) },
    {
      name: 'residuals-so-far',
      draw: (size) => residualFigure({ residuals: residuals.slice(0, 3), soFar: true }, force, size),
    },
    { name: 'step-errors', draw: (size) => stepErrorFigure(steps, force, size) },
    ...(['individuals', 'ranges', 'ewma'] as const).map((kind) => ({
      name: `control-${kind}`,
      draw: (size: FigureSize) => controlChart(controlChartOf(history, kind)!, force, size),
    })),
    { name: 'drift-slope', draw: (size) => driftFigure(series, 'slope', force, size) },
    { name: 'drift-zero', draw: (size) => driftFigure(series, 'zero', force, size) },
  ]
}

function strips(name: string): MadeFigure[] {
  const random = seededNumbers(11)
  const group = (called: string, count: number, middleMPa: number): StripGroup => {
    const blocks = Array.from({ length: count }, (_, index) => ({
      name: `${called} ${index + 1}`,
      strengthMPa: middleMPa + 3 * (random() + random() - 1),
      lowerLimit: index === 3,
      woodFailurePercent: index % 7 === 2 ? null : 5 * Math.round(20 * random()),
    }))
    return { name: called, meanMPa: blocks.reduce((sum, { strengthMPa }) => sum + strengthMPa / count, 0), blocks }
  }
  const groups = [group('Epoxy E4, clamped 24 h', 12, 9), group(name, 6, 7.4), group('Hide glue', 30, 8.2)]
  const alone = [{ name, meanMPa: null, blocks: [] }]
  return [
    { name: 'group-strip', draw: (size) => groupStrip(groups, strength, size) },
    { name: 'group-strip-empty', draw: (size) => groupStrip(alone, strength, size) },
  ]
}

function statistics(name: string): MadeFigure[] {
  const random = seededNumbers(23)
  const ranked = [name, 'Resorcinol R2', 'Casein C1', 'Epoxy E4, clamped 24 h'].map((called, i) => ({
    ...{ name: called, rank: i + 1, low: Math.max(i, 1), high: Math.min(i + 2, 4), firstShare: 0.6 / (i + 1) },
  }))
  const many = Array.from({ length: 30 }, (_, i) => ({
    ...{ name: `Adhesive ${i + 1}`, rank: i + 1, low: Math.max(i - 4, 1), high: Math.min(i + 6, 30), firstShare: 0 },
  }))
  const joints = ['long grain to long grain', 'long grain to end grain', name, 'scarf', 'lap']
  const blocks = Array.from({ length: 90 }, (_, i) => ({
    ...{ name: `${name} ${i + 1}`, strengthMPa: 7 + 5 * random(), jointType: joints[i % joints.length]! },
    woodFailurePercent: i % 11 === 3 ? null : 5 * Math.round(20 * random()),
  }))
  const bonds = Array.from({ length: 14 }, (_, i) => ({
    ...{ name: `${name} ${i + 1}`, strengthMPa: 9 * (-Math.log(1 - (i + 0.5) / 14)) ** 0.12, held: i % 4 === 1 },
  }))
  const of = (held: boolean) => bonds.filter((one) => one.held === held).map((one) => one.strengthMPa)
  const paper = (failed: number[]) => weibullPlot({ failed, censored: of(true) }, paperShares, 0.95)
  const held = bonds.filter((one) => one.held)
  const shared = { name, confidence: 0.95 }
  const standings = [name, 'Casein C1', 'Epoxy E4, clamped 24 h', 'Urea-formaldehyde F6'].map((adhesive, i) => ({
    ...{ adhesive, ratio: i === 3 ? null : 0.8 + i / 5, low: i === 2 ? null : 0.7 + i / 5, high: 0.9 + i / 5 },
    missing: i === 2 ? ['loft'] : [],
  }))
  return [
    { name: 'ranking', draw: (size) => rankFigure(ranked, size) },
    { name: 'ranking-many', draw: (size) => rankFigure(many, size) },
    { name: 'overall', draw: (size) => overallFigure(standings, name, size) },
    { name: 'wood-strength', draw: (size) => woodStrengthFigure(blocks, 75, strength, size) },
    {
      name: 'wood-strength-alike',
      draw: (size) => woodStrengthFigure(blocks.slice(0, 1), 75, strength, size),
    },
    {
      name: 'weibull',
      draw: (size) => weibullFigure({ ...shared, blocks: bonds, plot: paper(of(false)) }, strength, size),
    },
    {
      name: 'weibull-held',
      draw: (size) => weibullFigure({ ...shared, blocks: held, plot: paper([]) }, strength, size),
    },
  ]
}

function ageing(name: string): MadeFigure[] {
  const random = seededNumbers(17)
  const ages = [0, 6, 12, 24]
  const blocks = ages.flatMap((ageMonths) =>
    Array.from({ length: 12 }, (_, index) => ({
      name: `${name} ${index + 1}`,
      ageMonths: ageMonths === 12 && index > 8 ? 13 : ageMonths,
      strengthMPa: 9 - ageMonths / 12 + 2 * (random() + random() - 1),
      lowerLimit: index === 3,
      woodFailurePercent: index % 7 === 2 ? null : 5 * Math.round(20 * random()),
    })),
  )
  const means = ages.map((ageMonths) => {
    const meanMPa = 9 - ageMonths / 12
    return { ageMonths, n: 12, meanMPa, lowMPa: meanMPa - 0.5, highMPa: meanMPa + 0.5 }
  })
  const curve = Array.from({ length: 40 }, (_, index) => {
    const ageMonths = (index / 39) ** 2 * 360
    const meanMPa = 7 + 2 * Math.exp(-ageMonths / 30)
    return { ageMonths, meanMPa, lowMPa: meanMPa - 0.4 - ageMonths / 60, highMPa: meanMPa + 0.4 + ageMonths / 60 }
  })
  const picture: AgeingPicture = {
    ...{ name, blocks, means, curve, upcomingMonths: [36, 60, 120, 240, 360], endMonths: 360, reachMPa: 12 },
    ...{ level: { sharePercent: 80, strengthMPa: 7.2 }, heightEm: 26, withKeys: true },
  }
  const young = { ...picture, curve: null, means: means.slice(0, 2), blocks: blocks.slice(0, 24), heightEm: 19 }
  return [
    { name: 'ageing', draw: (size) => ageingFigure(picture, strength, size) },
    { name: 'ageing-few-ages', draw: (size) => ageingFigure({ ...young, withKeys: false }, strength, size) },
    { name: 'ageing-keys', draw: (size) => ageingKeysFigure([picture], size) },
    {
      name: 'ageing-multiples',
      draw: (size) => ageingMultiples([{ ...picture, heightEm: 19 }, young, { ...young, name: 'U3' }], strength, size),
    },
  ]
}

function plans(): MadeFigure[] {
  const curve = differenceCurve({ comparison: 'pair', groups: 2, confidence: 0.95 }, 0.8, 12, 30)
  return [
    { name: 'difference', draw: (size) => differenceFigure({ curve, planned: 12, wantedPercent: 10 }, size) },
    { name: 'difference-beyond', draw: (size) => differenceFigure({ curve, planned: 2, wantedPercent: null }, size) },
  ]
}

function climates(name: string): MadeFigure[] {
  const stored = { series: madeSeries, axis: climateAxis, name, days: madePanel().days }
  return [
    { name: 'climate', draw: (size) => climatePanel(madePanel(), size) },
    { name: 'climate-strength', draw: (size) => storedStrength(stored, strength, size) },
  ]
}
