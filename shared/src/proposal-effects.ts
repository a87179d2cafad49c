/** What a proposal would do beyond its own moves: to readings, to what each thing is to be minded for, to signatures. */
import type { ReadingWord } from '@enfilade/colour/reading-thresholds';
import type { CautionWords } from '@enfilade/practice/cautions';
import type { Judgements, VignetteState } from './judgements.ts';
import type { ProposedMove } from './proposal-moves.ts';
import type { PieceId, SurfaceId, VignetteId } from './schema.ts';
import type { VignetteChange } from './sign-off.ts';

export interface ReadingEffect {
  readonly pieceId: PieceId;
  readonly from: ReadingWord | null;
  readonly to: ReadingWord | null;
}

export interface SignOffEffect {
  readonly vignetteId: VignetteId;
  readonly from: VignetteState;
  readonly to: VignetteState;
  readonly changes: readonly VignetteChange[];
}

/** Least clear distance from a piece to a neighbour on its wall, mm; negative where they overlap. */
export interface GapEffect {
  readonly pieceId: PieceId;
  readonly fromMm: number | null;
  readonly toMm: number | null;
}

export interface CautionEffect {
  readonly pieceId: PieceId;
  /** Sentences that the proposal brings, and those it takes away. */
  readonly comes: readonly string[];
  readonly goes: readonly string[];
}

export interface Effects {
  readonly readings: readonly ReadingEffect[];
  readonly signOffs: readonly SignOffEffect[];
  readonly gaps: readonly GapEffect[];
  readonly cautions: readonly CautionEffect[];
}

/**
 * What is told of a piece, of a wall or of a vignette when `after` is the show with moves laid over `before`; cautions in
 * the reader's words (cm and kg without).
 */
export function effectsOf(
  before: Judgements,
  after: Judgements,
  moves: readonly ProposedMove[],
  words?: CautionWords,
): Effects {
  const moved = new Set<PieceId>();
  const repainted: SurfaceId[] = [];
  for (const { about, standing } of moves) {
    if (standing === 'left') continue;
    if (about.kind === 'piece') moved.add(about.pieceId);
    if (about.kind === 'wall') repainted.push(about.surface);
  }
  const read = new Set(moved);
  for (const surface of repainted) {
    for (const { pieceId } of after.elevationOf(surface)) read.add(pieceId);
  }
  // Neighbours' gaps change with what comes and goes beside them, but the move is told once, where it is made.
  return {
    readings: [...read].flatMap((pieceId) => readingEffect(before, after, pieceId)),
    signOffs: signOffEffects(before, after),
    gaps: [...moved].flatMap((pieceId) => gapEffect(before, after, pieceId)),
    cautions: [...read].flatMap((pieceId) => cautionEffect(before, after, pieceId, words)),
  };
}

function readingEffect(before: Judgements, after: Judgements, pieceId: PieceId): ReadingEffect[] {
  const from = before.readingOf(pieceId)?.word ?? null;
  const to = after.readingOf(pieceId)?.word ?? null;
  return from === to ? [] : [{ pieceId, from, to }];
}

function signOffEffects(before: Judgements, after: Judgements): SignOffEffect[] {
  const effects: SignOffEffect[] = [];
  for (const vignetteId of before.documents.all('vignettes').keys()) {
    const from = before.standingOf(vignetteId);
    const to = after.standingOf(vignetteId);
    if (from === null || to === null || from.digest === to.digest || from.signatures.length === 0) continue;
    if (to.changes.length === 0 || from.state === 'changed since') continue;
    effects.push({ vignetteId, from: from.state, to: to.state, changes: to.changes });
  }
  return effects;
}

function gapEffect(before: Judgements, after: Judgements, pieceId: PieceId): GapEffect[] {
  const fromMm = leastGapMm(before, pieceId);
  const toMm = leastGapMm(after, pieceId);
  return fromMm === toMm ? [] : [{ pieceId, fromMm, toMm }];
}

/** To the nearest other thing hung on the same wall; null where it hangs on none, or alone. */
function leastGapMm(judgements: Judgements, pieceId: PieceId): number | null {
  const surface = judgements.where.placeOf(pieceId)?.[0];
  if (surface === undefined || judgements.where.wallOf(surface) === null) return null;
  const onWall = judgements.elevationOf(surface).filter(({ direct }) => direct);
  const box = onWall.find((seen) => seen.pieceId === pieceId);
  if (box === undefined) return null;
  const others = onWall.filter((seen) => seen !== box);
  const gaps = judgements.gapsAround(surface, box, others);
  if (gaps === null) return null;
  const toThings = [gaps.left, gaps.right, gaps.above, gaps.below].filter(({ to }) => to !== 'edge');
  return toThings.length === 0 ? null : Math.round(Math.min(...toThings.map(({ mm }) => mm)));
}

function cautionEffect(before: Judgements, after: Judgements, pieceId: PieceId, words?: CautionWords): CautionEffect[] {
  const had = before.cautionsOf(pieceId, words);
  const has = after.cautionsOf(pieceId, words);
  const comes = has.filter(({ kind }) => !had.some((caution) => caution.kind === kind)).map(({ what }) => what);
  const goes = had.filter(({ kind }) => !has.some((caution) => caution.kind === kind)).map(({ what }) => what);
  return comes.length + goes.length === 0 ? [] : [{ pieceId, comes, goes }];
}
