/** Cautions with who accepted them. What was accepted is a caution as it stood: when that changes, the word falls away. */
import { acceptorsOf, isCautionKind, mayAccept } from '@enfilade/practice/accepting';
import type { Caution, CautionWords } from '@enfilade/practice/caution';
import type { Judgements } from './judgements.ts';
import type { Acceptance } from './protocol.ts';
import type { PieceId } from './schema.ts';
import { digestOf, toCanonicalText } from './sign-off.ts';

export interface StandingCaution {
  readonly pieceId: PieceId;
  readonly caution: Caution;
  /** Of what the caution is of: the piece, what it is on, and the figures, in centimetres and kilograms whatever the reader's words. */
  readonly digest: string;
  readonly accepted: Acceptance | null;
  /** The newest word on a caution of this kind, where it was of other facts. */
  readonly lapsed: Acceptance | null;
  /** The newest word on this very caution that was taken back. */
  readonly withdrawn: Acceptance | null;
}

/** Each caution on a piece, in the order of `cautionsOf`, with whoever accepted it as it stands. */
export function standingCautionsOf(judgements: Judgements, pieceId: PieceId, words?: CautionWords): StandingCaution[] {
  // In plain words: the digest is the same on the screen of whoever thinks in inches.
  const plain = judgements.cautionsOf(pieceId);
  const told = words === undefined ? plain : judgements.cautionsOf(pieceId, words);
  const on = judgements.where.placeOf(pieceId)?.[0] ?? null;
  const digests = plain.map(({ kind, what, source }) => digestOf(toCanonicalText({ pieceId, on, kind, what, source })));
  return plain.map((caution, index) => {
    const digest = digests[index] ?? '';
    const accepted = soundAcceptance(judgements.documents.get('acceptances', `${pieceId}|${digest}`));
    return {
      pieceId,
      caution: told[index] ?? caution,
      digest,
      accepted,
      lapsed: accepted === null ? lapsedOf(judgements, pieceId, caution, digests) : null,
      withdrawn: accepted === null ? withdrawnOf(judgements, pieceId, digest) : null,
    };
  });
}

function lapsedOf(
  judgements: Judgements,
  pieceId: PieceId,
  { kind }: Caution,
  standing: readonly string[],
): Acceptance | null {
  return newestOf(
    acceptancesOn(judgements, pieceId).filter(
      (one) => one.withdrawn === undefined && one.kind === kind && !standing.includes(one.digest),
    ),
  );
}

function withdrawnOf(judgements: Judgements, pieceId: PieceId, digest: string): Acceptance | null {
  return newestOf(
    acceptancesOn(judgements, pieceId).filter((one) => one.withdrawn !== undefined && one.digest === digest),
  );
}

function newestOf(all: readonly Acceptance[]): Acceptance | null {
  return all.reduce<Acceptance | null>((newest, one) => (newest === null || one.at > newest.at ? one : newest), null);
}

const byPiece = new WeakMap<
  object,
  { readonly version: number; readonly found: ReadonlyMap<PieceId, readonly Acceptance[]> }
>();

function acceptancesOn({ documents }: Judgements, pieceId: PieceId): readonly Acceptance[] {
  const version = documents.version('acceptances');
  let known = byPiece.get(documents);
  if (known?.version !== version) {
    const found = new Map<PieceId, Acceptance[]>();
    for (const one of documents.all('acceptances').values()) {
      const sound = soundAcceptance(one);
      if (sound !== null) found.set(sound.pieceId, [...(found.get(sound.pieceId) ?? []), sound]);
    }
    known = { version, found };
    byPiece.set(documents, known);
  }
  return known.found.get(pieceId) ?? [];
}

function soundAcceptance(one: Acceptance | undefined): Acceptance | null {
  const texts = [one?.pieceId, one?.kind, one?.name, one?.reason, one?.at];
  const back = one?.withdrawn;
  if (back !== undefined) texts.push(back.name, back.role, back.reason, back.at);
  return one !== undefined && texts.every((text) => typeof text === 'string') ? one : null;
}

export interface AcceptedBy {
  readonly role: string;
  /** The conservator on whose word it is; empty where it is one's own. */
  readonly wordOf: string;
}

/** Whether somebody is competent to accept a caution, on their own word or a conservator's. */
export function isCompetent({ kind }: Pick<Caution, 'kind'>, { role, wordOf }: AcceptedBy): boolean {
  return mayAccept(kind, role, wordOf === '' ? undefined : 'conservator');
}

/** Whether somebody may take an acceptance back: who gave it, and whoever is competent for what it is about. */
export function mayWithdraw(
  { kind, personId }: Pick<Acceptance, 'kind' | 'personId'>,
  person: { readonly id: string; readonly role: string },
): boolean {
  return personId === person.id || (isCautionKind(kind) && acceptingOf({ kind }, person.role) !== null);
}

/** How a role may accept a caution: by itself, on a conservator's word, or not at all. */
export function acceptingOf({ kind }: Pick<Caution, 'kind'>, role: string): 'own word' | 'a conservator’s word' | null {
  const own = acceptorsOf(kind).find((each) => each.role === role);
  return own === undefined ? null : own.onTheWordOf === undefined ? 'own word' : 'a conservator’s word';
}

/** 'the preparator', 'the conservator, or the registrar on a conservator’s word'. */
export function acceptorsText({ kind }: Pick<Caution, 'kind'>): string {
  return acceptorsOf(kind)
    .map(({ role, onTheWordOf }) =>
      onTheWordOf === undefined ? `the ${role}` : `the ${role} on a ${onTheWordOf}’s word`,
    )
    .join(', or ');
}

/** 'Piet Oyelaran, or the preparator': who may take an acceptance back. */
export function withdrawersText({ kind, name }: Pick<Acceptance, 'kind' | 'name'>): string {
  return isCautionKind(kind) ? `${name}, or ${acceptorsText({ kind })}` : name;
}
