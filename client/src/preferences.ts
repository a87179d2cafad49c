/** What each person sets for their own screen; kept in this browser. */

import type { Lamp } from '@enfilade/shared/lamps';
import { centimetresText, lengthFrom, toInches } from '@enfilade/space/lengths';
import { useSyncExternalStore } from 'react';

export type Unit = 'cm' | 'in';
export type Surround = 50 | 65 | 80 | 92;

export interface Preferences {
  readonly unit: Unit;
  /** Lightness L* of the board round the stage. */
  readonly surround: Surround;
  /** The light of this person's own studio; daylight unless said. */
  readonly studioLamp?: Lamp;
}

const KEY = 'enfilade.preferences';
const listeners = new Set<() => void>();
let now: Preferences = read();

function read(): Preferences {
  try {
    return { unit: 'cm', surround: 65, ...JSON.parse(localStorage.getItem(KEY) ?? '{}') } as Preferences;
  } catch {
    return { unit: 'cm', surround: 65 };
  }
}

export function prefer(change: Partial<Preferences>): void {
  now = { ...now, ...change };
  try {
    localStorage.setItem(KEY, JSON.stringify(now));
  } catch {
    // A browser without storage forgets at the next visit; nothing else depends on it.
  }
  document.documentElement.dataset.surround = String(now.surround);
  for (const listener of listeners) listener();
}

export function usePreferences(): Preferences {
  return useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => now,
  );
}

/** A length as this person reads it: `152.4` or `60 1/16`. */
export function lengthText(mm: number, unit: Unit): string {
  return unit === 'cm' ? centimetresText(mm) : toInches(mm);
}

/** What was typed, in mm, or null when it is no length. */
export function typedMm(text: string, unit: Unit): number | null {
  const read = lengthFrom(text, unit);
  return 'mm' in read ? read.mm : null;
}
