/**
 * What could stand in for a thing that falls away: shown the same way, then by its size, then by the part it played, then by
 * whether it can be had. Plain data in and out; the weights are our own rule, no source, and every answer says its reasons.
 */

export interface StandInThing {
  readonly id: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** False: its size is not known; one of the same type is then taken to be half alike. */
  readonly sizeKnown: boolean;
  /** As the record calls it: 'copper mould', 'painting'. */
  readonly type: string;
  /** How it is shown. */
  readonly shown: 'hung' | 'standing';
  /** Others can stand on or in it. */
  readonly carries: boolean;
}

export interface Candidate extends StandInThing {
  /** `held`: in the museum; `agreed`: lent and agreed; `asked`: lent, not agreed yet. */
  readonly had: 'held' | 'agreed' | 'asked';
}

export interface StandIn {
  readonly id: string;
  /** 0..1, 1 being the same size, the same part, and in the house. */
  readonly fit: number;
  readonly reasons: readonly string[];
}

const SIZE_WEIGHT = 0.5;
const PART_WEIGHT = 0.3;
const HAD_WEIGHT = 0.2;
const HAD: Readonly<Record<Candidate['had'], readonly [share: number, words: string]>> = {
  held: [1, 'in the house'],
  agreed: [0.7, 'lent, and agreed'],
  asked: [0.2, 'lent, and not agreed yet'],
};
/** Half or double the size on a side is no likeness any more. */
const FARTHEST = Math.log(2);

/**
 * The best of the candidates, the best first, ties by id; never the thing itself, one that cannot carry what it carried, or
 * one that is neither of its type nor anywhere near its size.
 */
export function standInsFor(thing: StandInThing, candidates: readonly Candidate[], most = 6): StandIn[] {
  return candidates
    .filter((other) => other.id !== thing.id && (!thing.carries || other.carries))
    .map((other) => {
      const size = sizeLikeness(thing, other);
      const sameType = thing.type !== '' && thing.type === other.type;
      const [had, hadWords] = HAD[other.had];
      const fit = SIZE_WEIGHT * size + PART_WEIGHT * partLikeness(thing, other) + HAD_WEIGHT * had;
      const reasons = [sizeWords(thing, other, size), partWords(thing, other), hadWords].filter((text) => text !== '');
      return { id: other.id, fit, reasons, alike: other.shown === thing.shown, near: size > 0 || sameType };
    })
    .filter(({ near }) => near)
    .sort((a, b) => Number(b.alike) - Number(a.alike) || b.fit - a.fit || (a.id < b.id ? -1 : 1))
    .slice(0, most)
    .map(({ id, fit, reasons }) => ({ id, fit, reasons }));
}

function sizeLikeness(a: StandInThing, b: StandInThing): number {
  if (!a.sizeKnown || !b.sizeKnown) return a.type !== '' && a.type === b.type ? 0.5 : 0;
  const side = (one: number, other: number): number =>
    one > 0 && other > 0 ? Math.max(0, 1 - Math.abs(Math.log(one / other)) / FARTHEST) : 0;
  return Math.sqrt(side(a.widthMm, b.widthMm) * side(a.heightMm, b.heightMm));
}

function partLikeness(a: StandInThing, b: StandInThing): number {
  if (a.type !== '' && a.type === b.type) return 1;
  return a.shown === b.shown ? 0.5 : 0;
}

function sizeWords(thing: StandInThing, other: StandInThing, likeness: number): string {
  if (!other.sizeKnown) return 'its size is not known';
  if (!thing.sizeKnown) return '';
  if (likeness > 0.93) return 'the same size within a hand';
  if (likeness === 0) return 'quite another size';
  const fits = other.widthMm <= thing.widthMm && other.heightMm <= thing.heightMm;
  return fits ? 'smaller: it fits the place' : 'larger: its neighbours move';
}

function partWords(thing: StandInThing, other: StandInThing): string {
  if (thing.type !== '' && thing.type === other.type) return `also a ${other.type}`;
  if (thing.shown !== other.shown) return other.shown === 'hung' ? 'it hangs' : 'it stands';
  return thing.shown === 'hung' ? 'hangs too' : 'stands too';
}
