/** What travels through awareness: who is here, where they look, what they hold, and a drag while it is going on. */
import type { ArrangeWish } from './arrange-task.ts';
import type { PaintId, PieceId, Place } from './schema.ts';
import type { Person } from './seats.ts';

/** The edge of a person's initials ring; told by shape, never by hue. */
export const RING_PATTERNS = ['plain', 'dashed', 'dotted', 'double', 'notched', 'dash-dot', 'half-heavy'] as const;
export type RingPattern = (typeof RING_PATTERNS)[number];

export interface Presence {
  /** Written by the server over whatever a client claims. */
  readonly person?: Person;
  /** The page they are on, in words of the address (`wall/dye:head`). */
  readonly at?: string;
  readonly selected?: readonly PieceId[];
  /** The proposal they work in; absent on the hang. What they hold and drag is meant there. */
  readonly layer?: string | null;
  /** Where they point, mm on a surface: shown to whoever looks at it. */
  readonly pointer?: readonly [SurfaceId: string, xMm: number, yMm: number] | null;
  /** What part of the drawing they look at, mm of the drawing (centre, width, height); null: the whole. */
  readonly looking?: readonly [XMm: number, YMm: number, widthMm: number, heightMm: number] | null;
  /** Paints they hold on trial on walls of the hang: shown to others on the colour desk, written nowhere. */
  readonly trialPaints?: readonly (readonly [SurfaceId: string, PaintId])[] | null;
  /** Ways to arrange they look at and let others see; `shown`, `tried`: digests (arrange-task.ts). */
  readonly arranging?: {
    readonly wish: ArrangeWish;
    readonly round: number;
    readonly shown: readonly string[];
    readonly tried: string | null;
  } | null;
  /** Whose view theirs goes along with. */
  readonly alongWith?: string | null;
  /** Pieces under their hand, where they are right now: shown to others, written nowhere. */
  readonly drag?: readonly (readonly [PieceId, Place])[] | null;
}

export function initialsOf(name: string): string {
  const words = name.trim().split(/\s+/);
  const first = words[0]?.[0] ?? '?';
  return (words.length > 1 ? first + (words.at(-1)?.[0] ?? '') : first).toUpperCase();
}

/** The same person has the same ring on every screen: people in order of id take the patterns in turn. */
export function ringPatternOf(personId: string, everyone: readonly string[]): RingPattern {
  const index = [...new Set([...everyone, personId])].sort().indexOf(personId);
  return RING_PATTERNS[index % RING_PATTERNS.length] as RingPattern;
}
