/**
 * What a person signs: the canonical form of a vignette (RFC 8785 JSON) and its SHA-256. What has changed since is the
 * difference of two canonical forms, above a tolerance.
 */
import canonicalize from 'canonicalize';
import { toHexString } from 'lib0/buffer';
import { digest as sha256 } from 'lib0/hash/sha256';
import { encodeUtf8 } from 'lib0/string';
import { focalOf, membersOf } from './commands.ts';
import type { ShowDocuments } from './documents.ts';
import { carrierOf, type PieceId, type Place, type SurfaceId, type VignetteId } from './schema.ts';

export interface CanonicalVignette {
  readonly name: string;
  readonly intent: string;
  readonly focal: PieceId | null;
  /** Every member, placed or not. */
  readonly places: { readonly [pieceId: PieceId]: Place | null };
  /** The paint behind each surface its members hang on: id, name and L*a*b*, so that a corrected paint shows too. */
  readonly paints: {
    readonly [surface: SurfaceId]: {
      readonly id: string;
      readonly name: string;
      readonly lab: readonly number[];
    } | null;
  };
}

/** @returns the vignette as it stands, or null when there is none. */
export function canonicalVignetteOf(documents: ShowDocuments, id: VignetteId): CanonicalVignette | null {
  const vignette = documents.get('vignettes', id);
  if (vignette === undefined) return null;
  const places: Record<PieceId, Place | null> = {};
  const paints: Record<SurfaceId, CanonicalVignette['paints'][string]> = {};
  for (const pieceId of membersOf(documents, id)) {
    const at = documents.get('places', pieceId) ?? null;
    places[pieceId] = at;
    if (at === null || carrierOf(at[0]) !== null) continue;
    const paintId = documents.get('paints', at[0]);
    const paint = paintId === undefined ? undefined : documents.get('deck', paintId);
    paints[at[0]] =
      paint === undefined || paintId === undefined
        ? null
        : { id: paintId, name: paint.name, lab: [paint.lab.L, paint.lab.a, paint.lab.b] };
  }
  return { name: vignette.name, intent: vignette.intent, focal: focalOf(documents, id), places, paints };
}

/** RFC 8785 text of a plain value: one text whatever order its keys were set in. */
export function toCanonicalText(form: object): string {
  return canonicalize(form) as string;
}

/** SHA-256 of a text, hex. In plain JavaScript: a browser over plain HTTP has no crypto.subtle. */
export function digestOf(text: string): string {
  return toHexString(sha256(encodeUtf8(text)));
}

/** One difference between what was signed and what stands. Lengths in mm. */
export type VignetteChange =
  | { readonly kind: 'renamed'; readonly from: string; readonly to: string }
  | { readonly kind: 'intent'; readonly from: string; readonly to: string }
  | { readonly kind: 'focal'; readonly from: PieceId | null; readonly to: PieceId | null }
  | { readonly kind: 'joined' | 'left'; readonly pieceId: PieceId }
  | { readonly kind: 'placed' | 'put back'; readonly pieceId: PieceId }
  | { readonly kind: 'moved'; readonly pieceId: PieceId; readonly dxMm: number; readonly dyMm: number }
  | { readonly kind: 'moved elsewhere'; readonly pieceId: PieceId; readonly from: string; readonly to: string }
  | { readonly kind: 'turned'; readonly pieceId: PieceId; readonly byCentidegrees: number }
  | { readonly kind: 'lifted'; readonly pieceId: PieceId; readonly byMm: number }
  | {
      readonly kind: 'repainted';
      readonly surface: SurfaceId;
      readonly from: string | null;
      readonly to: string | null;
    };

/** A turn smaller than this is nobody's change: half a degree, own rule. */
const TURN_TOLERANCE_CENTIDEGREES = 50;

/** What differs, piece by piece; moves and lifts up to `toleranceMm` are not told. */
export function changesBetween(
  signed: CanonicalVignette,
  now: CanonicalVignette,
  toleranceMm: number,
): readonly VignetteChange[] {
  const changes: VignetteChange[] = [];
  if (signed.name !== now.name) changes.push({ kind: 'renamed', from: signed.name, to: now.name });
  if (signed.intent !== now.intent) changes.push({ kind: 'intent', from: signed.intent, to: now.intent });
  if (signed.focal !== now.focal) changes.push({ kind: 'focal', from: signed.focal, to: now.focal });
  for (const pieceId of new Set([...Object.keys(signed.places), ...Object.keys(now.places)])) {
    const before = signed.places[pieceId];
    const after = now.places[pieceId];
    if (before === undefined) changes.push({ kind: 'joined', pieceId });
    else if (after === undefined) changes.push({ kind: 'left', pieceId });
    else changes.push(...placeChanges(pieceId, before, after, toleranceMm));
  }
  for (const [surface, before] of Object.entries(signed.paints)) {
    const after = now.paints[surface];
    // A wall that no member hangs on any more is told by the moves, not by its paint.
    if (after === undefined) continue;
    if (before?.id !== after?.id || String(before?.lab) !== String(after?.lab)) {
      changes.push({ kind: 'repainted', surface, from: before?.name ?? null, to: after?.name ?? null });
    }
  }
  return changes;
}

function placeChanges(
  pieceId: PieceId,
  before: Place | null,
  after: Place | null,
  toleranceMm: number,
): VignetteChange[] {
  if (before === null || after === null) {
    if (before === after) return [];
    return [{ kind: before === null ? 'placed' : 'put back', pieceId }];
  }
  if (before[0] !== after[0]) return [{ kind: 'moved elsewhere', pieceId, from: before[0], to: after[0] }];
  const changes: VignetteChange[] = [];
  const dxMm = after[1] - before[1];
  const dyMm = after[2] - before[2];
  if (Math.hypot(dxMm, dyMm) > toleranceMm) changes.push({ kind: 'moved', pieceId, dxMm, dyMm });
  if (Math.abs(after[3] - before[3]) > toleranceMm)
    changes.push({ kind: 'lifted', pieceId, byMm: after[3] - before[3] });
  const turn = ((after[4] - before[4] + 54000) % 36000) - 18000;
  if (Math.abs(turn) > TURN_TOLERANCE_CENTIDEGREES) changes.push({ kind: 'turned', pieceId, byCentidegrees: turn });
  return changes;
}
