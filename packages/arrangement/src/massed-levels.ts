import type { MassCandidate, MassName, MassTask, StandingThing } from './mass-task.ts';
import { massedAs } from './massed.ts';

export type Level = Omit<MassTask, 'things'>;

/** What is massed on one level: which of the things, by index, and how. */
export interface LevelMassed {
  readonly things: readonly number[];
  readonly candidate: MassCandidate;
}

/**
 * Things shared out among the levels of one carrier, the lowest level first, and massed on each: tall things low, about
 * as much width on each level, none where it is too high to stand. What finds no room on its level is tried on the
 * levels over it, and once more on those below; the rest is left out. RangeError as for `massed`.
 */
export function massedLevels(
  name: MassName,
  levels: readonly Level[],
  things: readonly StandingThing[],
): readonly LevelMassed[] {
  const waiting = things.map((_, i) => i).sort((a, b) => things[b]!.heightMm - things[a]!.heightMm || a - b);
  const on = (level: Level, which: readonly number[]): LevelMassed => ({
    things: which,
    candidate: massedAs(name, { ...level, things: which.map((i) => things[i]!) }),
  });
  const whole = waiting.reduce((sum, i) => sum + things[i]!.widthMm, 0);
  const shelves = levels.reduce((sum, { widthMm }) => sum + widthMm, 0);
  let left = waiting;
  let [due, taken] = [0, 0];
  const massed = levels.map((level, k) => {
    due += k === levels.length - 1 ? Infinity : (whole * level.widthMm) / shelves;
    const which = left.filter((i) => {
      const { widthMm, heightMm } = things[i]!;
      if (heightMm > (level.clearHeightMm ?? Infinity) || taken + widthMm / 2 > due) return false;
      taken += widthMm;
      return true;
    });
    const made = standing(on(level, which));
    const stands = new Set(made.things);
    taken -= which.reduce((sum, i) => sum + (stands.has(i) ? 0 : things[i]!.widthMm), 0);
    left = left.filter((i) => !stands.has(i));
    return made;
  });
  // Whatever found no room is tried wherever one more may stand, as long as nobody has to go for it.
  for (const i of left) {
    const emptiest = levels
      .map((_, k) => k)
      .sort((a, b) => massed[a]!.things.length - massed[b]!.things.length || a - b);
    for (const k of emptiest) {
      const made = massed[k]!;
      const more = on(levels[k]!, [...made.things, i]);
      if (more.candidate.unplaced.length > 0) continue;
      massed[k] = more;
      break;
    }
  }
  return massed;

  function standing(made: LevelMassed): LevelMassed {
    const places = made.candidate.places.filter((at) => at !== null);
    const which = made.things.filter((_, k) => made.candidate.places[k] !== null);
    return { things: which, candidate: { ...made.candidate, places, unplaced: [] } };
  }
}
