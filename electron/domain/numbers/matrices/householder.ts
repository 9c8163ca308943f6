/** A tall matrix as its columns, reduced to R and applied to one right-hand side. */
export type LeastSquaresSolution = {
  readonly solution: readonly number[]
  /** R⁻¹, upper triangular, so that R⁻¹ R⁻ᵀ = (AᵀA)⁻¹. */
  readonly inverseR: readonly (readonly number[])[]
}

type Reflections = { readonly vectors: Float64Array[]; readonly r: number[][] }

function reflect(vector: Float64Array, values: Float64Array, from: number): void {
  let product = 0
  for (let i = from; i < values.length; i++) product += vector[i]! * values[i]!
  for (let i = from; i < values.length; i++) values[i] = values[i]! - 2 * product * vector[i]!
}

function reduce(columns: readonly Float64Array[]): Reflections {
  const work = columns.map((column) => Float64Array.from(column))
  const vectors: Float64Array[] = []
  const r: number[][] = columns.map(() => new Array<number>(columns.length).fill(0))
  work.forEach((column, k) => {
    const whole = Math.hypot(...columns[k]!)
    for (let j = 0; j < k; j++) r[j]![k] = column[j]!
    const below = Math.hypot(...column.subarray(k))
    if (!(below > 1e-12 * whole)) throw new RangeError('householderLeastSquares requires independent columns')
    const pivot = column[k]! > 0 ? -below : below
    const vector = new Float64Array(column.length)
    for (let i = k; i < column.length; i++) vector[i] = column[i]!
    vector[k] = vector[k]! - pivot
    const length = Math.hypot(...vector.subarray(k))
    for (let i = k; i < vector.length; i++) vector[i] = vector[i]! / length
    r[k]![k] = pivot
    for (let j = k + 1; j < work.length; j++) reflect(vector, work[j]!, k)
    vectors.push(vector)
  })
  return { vectors, r }
}

function solveUpper(r: readonly (readonly number[])[], right: ArrayLike<number>): number[] {
  const solution = new Array<number>(r.length).fill(0)
  for (let k = r.length - 1; k >= 0; k--) {
    let rest = right[k]!
    for (let j = k + 1; j < r.length; j++) rest -= r[k]![j]! * solution[j]!
    solution[k] = rest / r[k]![k]!
  }
  return solution
}

function residual(
  columns: readonly Float64Array[],
  solution: readonly number[],
  right: ArrayLike<number>,
): Float64Array {
  return Float64Array.from({ length: right.length }, (_, i) => {
    let rest = right[i]!
    columns.forEach((column, k) => {
      rest -= solution[k]! * column[i]!
    })
    return rest
  })
}

/**
 * Least squares by Householder reflections: the x that makes ‖A x − y‖ least, and R⁻¹, in the units of A and y.
 *
 *   A = Q R,  R x = Qᵀ y
 *
 * Orthogonal, so the condition of A is not squared as normal equations would; one step of refinement on the residual.
 * Throws RangeError for fewer rows than columns, a number that is not finite, or columns that depend on each other.
 * Source: G. H. Golub and C. F. Van Loan, Matrix Computations, 5.3 (from memory).
 * Checked: tests/domain/numbers/matrices/householder.spec.ts, and against NIST StRD in polynomialFit.spec.ts.
 */
export function householderLeastSquares(
  columns: readonly Float64Array[],
  right: ArrayLike<number>,
): LeastSquaresSolution {
  if (columns.length === 0 || right.length < columns.length)
    throw new RangeError('householderLeastSquares requires at least as many rows as columns')
  if (columns.some((column) => column.length !== right.length || !column.every(Number.isFinite)))
    throw new RangeError('householderLeastSquares requires finite columns as long as the right-hand side')
  const { vectors, r } = reduce(columns)
  const solve = (values: Float64Array) => {
    vectors.forEach((vector, k) => {
      reflect(vector, values, k)
    })
    return solveUpper(r, values)
  }
  const first = solve(Float64Array.from(right))
  const correction = solve(residual(columns, first, right))
  const solution = first.map((value, k) => value + correction[k]!)
  const unit = r.map((_, k) =>
    solveUpper(
      r,
      Array.from(r, (__, j) => (j === k ? 1 : 0)),
    ),
  )
  return { solution, inverseR: r.map((_, row) => unit.map((column) => column[row]!)) }
}
