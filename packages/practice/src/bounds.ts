/** What numbers an engine takes; a programmer's error names the value and the bound. */

/** The value itself. RangeError unless it is finite and least ≤ value ≤ most. */
export function within(name: string, value: number, least: number, most = 1e9): number {
  if (value >= least && value <= most) return value;
  throw new RangeError(`${name} is ${value}; it must lie between ${least} and ${most}`);
}

/** The value itself. RangeError unless it is finite and bound < value ≤ most. */
export function above(name: string, value: number, bound: number, most = 1e9): number {
  if (value > bound && value <= most) return value;
  throw new RangeError(`${name} is ${value}; it must be above ${bound} and at most ${most}`);
}

/** The value itself. RangeError unless it is a whole number and least ≤ value ≤ most. */
export function wholeWithin(name: string, value: number, least: number, most = 1e6): number {
  if (Number.isInteger(value) && value >= least && value <= most) return value;
  throw new RangeError(`${name} is ${value}; it must be a whole number between ${least} and ${most}`);
}
