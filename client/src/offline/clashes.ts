/** What was changed on both sides while somebody was away: their word, mine, and what it was before. Pure. */
import type { Deed } from '@enfilade/shared/deeds';
import { sameJson, type Written } from '@enfilade/shared/documents';
import { type ArrangedRoot, isArranged } from '@enfilade/shared/hang-layer';
import { carrierOf, type Json, type PieceId, type Place } from '@enfilade/shared/schema';

/** One fact of the hang with two words on it. Absent: taken away, or not there. */
export interface BothSides {
  readonly root: ArrangedRoot;
  readonly key: string;
  readonly from?: Json;
  readonly mine?: Json;
  readonly theirs?: Json;
  /**
   * In a ring of carriers: their fact, on another piece. Mine holds by setting theirs back to its `from`, theirs by setting
   * mine back to mine.
   */
  readonly other?: { readonly key: string; readonly from?: Json; readonly to?: Json };
  /** Who else, and when. */
  readonly name: string;
  readonly at: string;
}

/** A loss of connection is noticed late: what others did this long before it was noticed was not heard either, ms. */
export const NOTICED_LATE_MS = 90_000;

/**
 * Facts that I changed while away and somebody else changed too. `deeds`, newest first, reach back to `since` less
 * NOTICED_LATE_MS. The same change made twice is no clash, nor is one of theirs that came back to where it was.
 */
export function bothSidesOf(facts: readonly Written[], deeds: readonly Deed[], me: string, since: string): BothSides[] {
  const both: BothSides[] = [];
  for (const { root, key, from, to: mine } of facts) {
    if (!isArranged(root)) continue;
    const theirs = theirWordOn(deeds, root, key, me, since);
    if (theirs === null || sameJson(theirs.to, from) || sameJson(theirs.to, mine)) continue;
    both.push({
      root,
      key,
      name: theirs.name,
      at: theirs.at,
      ...(from === undefined ? {} : { from }),
      ...(mine === undefined ? {} : { mine }),
      ...(theirs.to === undefined ? {} : { theirs: theirs.to }),
    });
  }
  return both;
}

/**
 * Rings of carriers that I and somebody else closed, each before seeing the other: my piece set on what theirs carries.
 * `placeOf` is what stands written after the return.
 */
export function ringsOf(
  facts: readonly Written[],
  deeds: readonly Deed[],
  me: string,
  placeOf: (pieceId: PieceId) => Place | undefined,
): BothSides[] {
  const rings: BothSides[] = [];
  for (const { root, key, from, to: mine } of facts) {
    if (root !== 'places' || mine === undefined || !sameJson(mine, placeOf(key) as Json | undefined)) continue;
    const ring = ringThrough(key, placeOf);
    const theirs = deeds
      .filter(({ personId }) => personId !== me)
      .flatMap(({ name, at, changes }) =>
        changes.flatMap((change) =>
          change.root === 'places' && change.key !== key && ring.includes(change.key) ? [{ change, name, at }] : [],
        ),
      )[0];
    if (theirs === undefined) continue;
    const { change, name, at } = theirs;
    rings.push({
      root,
      key,
      name,
      at,
      mine,
      ...(from === undefined ? {} : { from }),
      other: {
        key: change.key,
        ...(change.from === undefined ? {} : { from: change.from }),
        ...(change.to === undefined ? {} : { to: change.to }),
      },
    });
  }
  return rings;
}

/** Every piece of the ring of carriers a piece stands in; empty where it stands in none. */
function ringThrough(pieceId: PieceId, placeOf: (id: PieceId) => Place | undefined): PieceId[] {
  const chain: PieceId[] = [];
  for (let at: PieceId | undefined = pieceId; at !== undefined && !chain.includes(at); ) {
    chain.push(at);
    at = carrierOf(placeOf(at)?.[0] ?? '')?.pieceId;
    if (at === pieceId) return chain;
  }
  return [];
}

function theirWordOn(
  deeds: readonly Deed[],
  root: string,
  key: string,
  me: string,
  since: string,
): { readonly to: Json | undefined; readonly name: string; readonly at: string } | null {
  for (const { personId, name, at, changes } of deeds) {
    const change = changes.find((candidate) => candidate.root === root && candidate.key === key);
    if (change === undefined) continue;
    if (personId !== me) return { to: change.to, name, at };
    // What I did before I was away answers whatever came before it; what I did since is what has just been sent.
    if (at <= since) return null;
  }
  return null;
}
