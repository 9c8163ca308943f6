/**
 * The steps of the colour scale on white paper, lowest first: each darker than the one before, for grey prints and for eyes that miss a colour.
 * Checked: tests/figures/drawing/scaleTones.spec.ts by luminance and by simulated dichromacy.
 */
export const scaleTones = {
  'scale-1': '#b1801a',
  'scale-2': '#bb5729',
  'scale-3': '#b0304c',
  'scale-4': '#7e286d',
  'scale-5': '#44286b',
  'scale-6': '#0e1d52',
} as const

/** What is written on each step. */
export const onScaleTones = {
  'on-1': '#14110c',
  'on-2': '#ffffff',
  'on-3': '#ffffff',
  'on-4': '#ffffff',
  'on-5': '#ffffff',
  'on-6': '#ffffff',
} as const
