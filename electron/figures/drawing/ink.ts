import { type Ink, inks, onScaleInks, openInks, scaleInks } from './mark.ts'
import { onScaleTones, scaleTones } from './scaleTones.ts'

/** Colours that a figure asks for, with what they are where nobody sets them: on white paper. */
const tones = {
  ground: '#ffffff',
  ink: '#231f19',
  soft: '#564e42',
  quiet: '#6a6154',
  line: '#dcd4c5',
  edge: '#8b8171',
  data: '#0e5a61',
  limit: '#7d5200',
  alarm: '#a8180f',
  ...scaleTones,
  ...onScaleTones,
} as const
type Tone = keyof typeof tones

type Form = { stroke?: Tone; fill?: Tone; attributes: Readonly<Record<string, string | number>> }

const line = (stroke: Tone, width: number, dashes?: string): Form => ({
  stroke,
  attributes: {
    fill: 'none',
    'stroke-width': width,
    'stroke-linejoin': 'round',
    ...(dashes === undefined ? {} : { 'stroke-dasharray': dashes }),
  },
})
const point = (stroke: Tone, fill: Tone): Form => ({
  stroke,
  fill,
  attributes: { 'stroke-width': 1.5, 'stroke-linejoin': 'round' },
})
const wash = (fill: Tone, opacity: number): Form => ({ fill, attributes: { 'fill-opacity': opacity } })

/** The same form for each step of the colour scale, in the tone that has its name. */
const stepped = <Step extends Ink>(steps: readonly Step[], form: (step: Step) => Form) =>
  Object.fromEntries(steps.map((step) => [step, form(step)])) as Record<Step, Form>

/** Dashes and widths tell lines apart on a grey print too. */
const forms: Record<Ink, Form> = {
  grid: line('line', 1),
  axis: line('edge', 1),
  zero: line('soft', 1.25),
  centre: line('edge', 1, '2 3'),
  limit: line('limit', 1.25, '7 4'),
  rated: line('alarm', 2),
  curve: line('data', 1.5),
  ahead: line('data', 1.5, '5 4'),
  overlaid: line('edge', 1.25),
  aside: line('quiet', 1.25, '7 5'),
  outlying: line('limit', 1.5),
  foremost: line('data', 2.5),
  quartile: line('ink', 1.5, '2 3'),
  band: wash('data', 0.14),
  joined: line('data', 1.25),
  seated: line('limit', 1.75, '14 5 3 5'),
  point: point('data', 'data'),
  hollow: point('data', 'ground'),
  half: { fill: 'data', attributes: {} },
  event: point('limit', 'ground'),
  ring: line('alarm', 2),
  chosen: line('ink', 2),
  mean: line('ink', 2.5),
  spread: line('ink', 1.25),
  rest: wash('limit', 0.3),
  span: wash('limit', 0.1),
  shade: wash('data', 0.14),
  gap: { stroke: 'edge', fill: 'edge', attributes: { 'fill-opacity': 0.12, 'stroke-dasharray': '2 3' } },
  leader: line('edge', 1),
  plate: { stroke: 'edge', fill: 'ground', attributes: { 'stroke-width': 1 } },
  tick: { fill: 'quiet', attributes: {} },
  title: { fill: 'soft', attributes: {} },
  // The ground shows around each letter, so that a label is read across a line
  label: {
    fill: 'ink',
    stroke: 'ground',
    attributes: { 'stroke-width': 3, 'stroke-linejoin': 'round', 'paint-order': 'stroke' },
  },
  heading: { fill: 'ink', attributes: { 'font-weight': 600 } },
  sheet: { fill: 'ground', attributes: {} },
  ...stepped(scaleInks, (step) => ({ fill: step, attributes: {} })),
  ...stepped(openInks, (step) => line(scaleInks[openInks.indexOf(step)]!, 1.5)),
  ...stepped(onScaleInks, (step) => ({ fill: step, attributes: {} })),
}

/** The form of an ink as presentation attributes, which a page may carry where inline style is forbidden. */
export function inkAttributes(ink: Ink): Readonly<Record<string, string | number>> {
  return forms[ink].attributes
}

/** The colours of an ink on white paper as presentation attributes, which every program that shows SVG knows. */
export function paperColours(ink: Ink): Readonly<Record<string, string>> {
  const { fill, stroke } = forms[ink]
  return {
    ...(fill === undefined ? {} : { fill: tones[fill] }),
    ...(stroke === undefined ? {} : { stroke: tones[stroke] }),
  }
}

const toned = (property: 'stroke' | 'fill', tone: Tone | undefined) =>
  tone === undefined ? '' : `${property}:var(--figure-${tone},${tones[tone]});`

/** Typefaces of figures, the first that is there. */
export const figureTypefaces = 'Roboto, "Liberation Sans", "Helvetica Neue", Arial, sans-serif'

/** The colours of all inks as a style sheet. A page sets `--figure-*` to its own; where nobody does, it prints on white. */
export const figureSheet: string = [
  `.figure{font-family:var(--figure-font,${figureTypefaces})}`,
  ...inks.map((ink) => `.figure .ink-${ink}{${toned('fill', forms[ink].fill)}${toned('stroke', forms[ink].stroke)}}`),
].join('\n')
