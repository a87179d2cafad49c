/** What breaks when a thing falls away, whom to tell, and what could stand in for it. */
import { focalOf, membersOf, vignetteOf } from './commands.ts';
import type { Judgements } from './judgements.ts';
import { hasFallen, isCountedOn, isLent, loanOf } from './loans.ts';
import { movesOf } from './proposal-moves.ts';
import { type ObjectId, type PieceId, pieceIdOf, type VignetteId } from './schema.ts';
import { type Candidate, type StandIn, type StandInThing, standInsFor } from './stand-ins.ts';
import { onName } from './surface-names.ts';

export interface LostVignette {
  readonly vignetteId: VignetteId;
  readonly name: string;
  /** It loses what it is built around. */
  readonly focal: boolean;
  readonly pieces: number;
  readonly of: number;
  /** Whose word on it stands, and falls away with the thing. */
  readonly signers: readonly string[];
}

export interface Loss {
  /** Where its pieces are, in words, with how many. */
  readonly places: readonly { readonly on: string; readonly pieces: number }[];
  /** What stands on it, and has no place without it. */
  readonly carried: readonly string[];
  readonly vignettes: readonly LostVignette[];
  /** Titles of open proposals that move it. */
  readonly proposals: readonly string[];
  /** Days of the show that still come, the nearest first. */
  readonly days: readonly { readonly what: string; readonly day: string }[];
  /** Names of whoever signed, proposed or asked about it. */
  readonly tell: readonly string[];
}

/** @param today ISO date. */
export function lossOf(judgements: Judgements, objectId: ObjectId, today: string): Loss {
  const pieces = judgements.piecesOf(objectId);
  const { proposals, ...rest } = vignettesAndPeople(judgements, objectId);
  return {
    ...rest,
    places: placesOf(judgements, pieces),
    carried: pieces.flatMap((pieceId) => [...judgements.where.directlyOn(pieceId)]).map((id) => judgements.nameOf(id)),
    proposals,
    days: DAYS.map(({ key, what }) => ({ what, day: judgements.setting(key) }))
      .filter(({ day }) => day >= today)
      .sort((a, b) => (a.day < b.day ? -1 : 1)),
  };
}

/** Vignettes and open proposals that lose it, and whoever signed, proposed or asked. */
export function vignettesAndPeople(
  judgements: Judgements,
  objectId: ObjectId,
): Pick<Loss, 'vignettes' | 'proposals' | 'tell'> {
  const { documents } = judgements;
  const pieces = judgements.piecesOf(objectId);
  const own = new Set(pieces);
  const vignettes = vignettesOf(judgements, pieces);
  const proposals = [...documents.all('proposals')].filter(
    ([id, { outcome }]) =>
      !outcome && movesOf(documents, id).some(({ about }) => about.kind === 'piece' && own.has(about.pieceId)),
  );
  const askers = [...documents.all('remarks').values()].filter(
    ({ about, settled }) => about?.kind === 'piece' && own.has(about.pieceId) && !settled,
  );
  const names = [
    ...vignettes.flatMap(({ signers }) => signers),
    ...proposals.map(([, { name }]) => name),
    ...askers.map(({ name }) => name),
  ];
  return { vignettes, proposals: proposals.map(([, { title }]) => title), tell: [...new Set(names)].sort() };
}

/** 'High water loses its focal work; the word of Dov Castellane on it falls away'. */
export function lostText({ name, focal, pieces, of, signers }: LostVignette): string {
  const loses = `${name} loses ${focal ? 'its focal work' : `${pieces} of ${of}`}`;
  return signers.length === 0 ? loses : `${loses}; the word of ${signers.join(' and ')} on it falls away`;
}

const DAYS = [
  { key: 'agreeBy', what: 'the vignettes are agreed' },
  { key: 'hangBegins', what: 'the hang begins' },
  { key: 'opens', what: 'the show opens' },
] as const;

function placesOf(judgements: Judgements, pieces: readonly PieceId[]): Loss['places'] {
  const counts = new Map<string, number>();
  for (const pieceId of pieces) {
    const at = judgements.where.placeOf(pieceId);
    if (at === null) continue;
    const on = onName(judgements, at[0]);
    counts.set(on, (counts.get(on) ?? 0) + 1);
  }
  return [...counts].map(([on, count]) => ({ on, pieces: count }));
}

function vignettesOf(judgements: Judgements, pieces: readonly PieceId[]): LostVignette[] {
  const { documents } = judgements;
  const counts = new Map<VignetteId, number>();
  for (const pieceId of pieces) {
    const id = vignetteOf(documents, pieceId);
    if (id !== null) counts.set(id, (counts.get(id) ?? 0) + 1);
  }
  return [...counts].map(([vignetteId, count]) => ({
    vignetteId,
    name: documents.get('vignettes', vignetteId)?.name ?? '',
    focal: pieces.includes(focalOf(documents, vignetteId) ?? ''),
    pieces: count,
    of: membersOf(documents, vignetteId).length,
    signers: (judgements.standingOf(vignetteId)?.signatures ?? [])
      .filter(({ changes }) => changes.length === 0)
      .map(({ name }) => name),
  }));
}

/** What is on the checklist, has no place yet, and could stand in, the best first. */
export function standInsOf(judgements: Judgements, objectId: ObjectId, most?: number): StandIn[] {
  const { documents } = judgements;
  const thing = thingOf(judgements, objectId);
  if (thing === null) return [];
  const candidates: Candidate[] = [];
  for (const other of documents.all('objects').keys()) {
    const { status } = loanOf(documents, other);
    const lent = isLent(documents, other);
    if (other === objectId || (lent && (hasFallen(status) || status === 'returned'))) continue;
    if (judgements.piecesOf(other).every((pieceId) => judgements.where.placeOf(pieceId) !== null)) continue;
    const its = thingOf(judgements, other);
    if (its !== null) candidates.push({ ...its, had: !lent ? 'held' : isCountedOn(status) ? 'agreed' : 'asked' });
  }
  return standInsFor(thing, candidates, most);
}

function thingOf(judgements: Judgements, objectId: ObjectId): StandInThing | null {
  const pieceId = pieceIdOf(objectId, 1);
  const object = judgements.objectOf(pieceId);
  const size = judgements.sizeOf(pieceId);
  if (object === undefined || size === null) return null;
  const hardware = judgements.hardwareOf(object);
  return {
    id: objectId,
    widthMm: size.widthMm,
    heightMm: size.heightMm,
    sizeKnown: size.known,
    type: object.type ?? '',
    shown: isOnWall(judgements, objectId) || (hardware !== null && hardware.hooks > 0) ? 'hung' : 'standing',
    carries: (object.levelsMm?.length ?? 0) > 0,
  };
}

function isOnWall(judgements: Judgements, objectId: ObjectId): boolean {
  return judgements.piecesOf(objectId).some((pieceId) => {
    const at = judgements.where.placeOf(pieceId);
    return at !== null && judgements.where.wallOf(at[0]) !== null;
  });
}
