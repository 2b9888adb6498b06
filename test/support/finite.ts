/** True when no number anywhere in a value is NaN or infinite. Rows of numbers are walked too. */
export function allFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (value instanceof Float64Array) return value.every(Number.isFinite);
  return typeof value !== 'object' || value === null || Object.values(value).every(allFinite);
}
