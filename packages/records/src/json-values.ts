/** Careful steps into parsed JSON of which nothing is known. */

export type JsonObject = Readonly<Record<string, unknown>>;

export function objectOf(value: unknown): JsonObject | null {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as JsonObject) : null;
}

/** A list as it is, one value as a list of one, nothing as none. */
export function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : value === undefined || value === null ? [] : [value];
}

export function textOf(value: unknown): string {
  return typeof value === 'string' ? value : typeof value === 'number' && Number.isFinite(value) ? String(value) : '';
}

/** A finite number above zero, or null. */
export function sizeOf(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) && value > 0 ? value : null;
}
