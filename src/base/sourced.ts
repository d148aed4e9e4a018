/** Figures that carry where they come from; screens and sheets print the source beside the figure. */

export interface Sourced<T = number> {
  readonly value: T;
  readonly unit: string;
  /** A published source, `common practice, no source`, `from memory: ...`, or `assumption`. */
  readonly source: string;
  readonly note?: string;
}

/** A figure with its unit, its source and what else there is to know. */
export function sourced<T>(value: T, unit: string, source: string, note?: string): Sourced<T> {
  return note === undefined ? { value, unit, source } : { value, unit, source, note };
}
