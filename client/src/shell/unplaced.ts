/** The unplaced, one entry a record, kept up as places change without looking at every record again. */
import type { Judgements } from '@enfilade/shared/judgements';
import { objectOfPiece, type PieceId, pieceIdOf } from '@enfilade/shared/schema';
import { useCallback, useSyncExternalStore } from 'react';
import { useShow } from '../sync/hooks.ts';
import type { Findable } from './rail-search.ts';

export interface Unplaced extends Findable {
  readonly count: number;
  /** Pieces with no place yet, by number. */
  readonly left: readonly PieceId[];
  readonly certain: boolean;
}

/** The unplaced part of a record; null when all of it is placed or it is gone. */
export function unplacedOf(judgements: Judgements, objectId: string): Unplaced | null {
  const object = judgements.documents.get('objects', objectId);
  if (object === undefined) return null;
  const left: PieceId[] = [];
  for (let n = 1; n <= object.count; n++) {
    const pieceId = pieceIdOf(objectId, n);
    if (judgements.documents.get('pieces', pieceId)?.removed) continue;
    if (judgements.where.placeOf(pieceId) === null) left.push(pieceId);
  }
  const first = left[0];
  if (first === undefined) return null;
  const size = judgements.sizeOf(first);
  return {
    objectId,
    number: object.number,
    title: object.title || object.number,
    kind: object.type ?? '',
    medium: object.medium ?? '',
    maker: object.maker ?? '',
    dateText: object.dateText ?? '',
    lender: object.lender,
    sizeKnown: size?.known ?? false,
    certain: size?.certain ?? false,
    heightMm: size?.heightMm ?? 0,
    widthMm: size?.widthMm ?? 0,
    count: object.count,
    left,
  };
}

/** All the unplaced by record, told at most once a frame. */
class UnplacedList {
  private readonly judgements: Judgements;
  private readonly entries = new Map<string, Unplaced>();
  private readonly stale = new Set<string>();
  private readonly listeners = new Set<() => void>();
  private list: readonly Unplaced[] = [];
  private frame = 0;

  constructor(judgements: Judgements) {
    this.judgements = judgements;
    const { documents } = judgements;
    for (const id of documents.all('objects').keys()) this.stale.add(id);
    this.refresh();
    const takePieces = (ids: ReadonlySet<string>): void => {
      for (const pieceId of ids) this.stale.add(objectOfPiece(pieceId));
      this.later();
    };
    // What stands on a thing goes with it, and what hangs in a room with the room.
    documents.subscribe('places', (ids) => takePieces(this.withLoads(ids)));
    documents.subscribe('pieces', takePieces);
    for (const root of ['rooms', 'openings'] as const) {
      documents.subscribe(root, () => takePieces(new Set(documents.all('places').keys())));
    }
    documents.subscribe('pictureCuts', (shas) => {
      for (const id of documents.all('objects').keys()) {
        if (shas.has(this.judgements.photographOf(`${id}#1`) ?? '')) this.stale.add(id);
      }
      this.later();
    });
    documents.subscribe('objects', (ids) => {
      for (const id of ids) this.stale.add(id);
      this.later();
    });
  }

  readonly get = (): readonly Unplaced[] => this.list;

  /** With all whose places lead to these, shown or not. */
  private withLoads(pieceIds: ReadonlySet<PieceId>): ReadonlySet<PieceId> {
    const all = new Set(pieceIds);
    for (const id of all) for (const load of this.judgements.where.directlyOn(id)) all.add(load);
    return all;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  private later(): void {
    if (this.frame !== 0) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.refresh();
      for (const listener of this.listeners) listener();
    });
  }

  private refresh(): void {
    for (const id of this.stale) {
      const entry = unplacedOf(this.judgements, id);
      if (entry === null) this.entries.delete(id);
      else this.entries.set(id, entry);
    }
    this.stale.clear();
    this.list = [...this.entries.values()];
  }
}

const lists = new WeakMap<Judgements, UnplacedList>();

export function useUnplaced(): readonly Unplaced[] {
  const { judgements } = useShow();
  const list = lists.get(judgements) ?? new UnplacedList(judgements);
  lists.set(judgements, list);
  return useSyncExternalStore(
    useCallback((tell) => list.subscribe(tell), [list]),
    list.get,
  );
}
