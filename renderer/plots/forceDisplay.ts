/** How forces of a curve are shown: multiplied by `factor`, written by `format`, named `unit`. */
export type ForceDisplay = { factor: number; unit: string; format(shown: number): string }
