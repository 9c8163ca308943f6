/** One number for each pixel of a field, row by row. */
export type Plane = { readonly width: number; readonly height: number; readonly values: Float32Array }

/** A plane whose value at each pixel is what `valueAt` says of its index. */
export function planeOf({ width, height }: { width: number; height: number }, valueAt: (i: number) => number): Plane {
  const values = new Float32Array(width * height)
  for (let i = 0; i < values.length; i++) values[i] = valueAt(i)
  return { width, height, values }
}
