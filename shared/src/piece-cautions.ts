/** What a piece's record, its planned light and its loan warn of: facts of the documents, as the practice engines ask for them. */
import type { Caution, CautionWords } from '@enfilade/practice/caution';
import { type LoanFacts, loanCautionsOf } from '@enfilade/practice/loan-cautions';
import type { PracticeProfile } from '@enfilade/practice/practice-profile';
import { type RecordFacts, recordCautionsOf } from '@enfilade/practice/record-cautions';
import { dateFrom } from '@enfilade/records/dates';
import { exposureOf, lightOn } from './light-plan.ts';
import { isLent, loanOf } from './loans.ts';
import { practiceProfileOf } from './practice-limits.ts';
import { carrierOf, LAYOUT_FLOOR, type MuseumObject, objectOfPiece, type PieceId, type Place } from './schema.ts';
import type { ShowReader } from './show-reader.ts';

/** What its materials, its type, its light and its being within reach warn of. */
export function recordCautions(reader: ShowReader, pieceId: PieceId): readonly Caution[] {
  const object = reader.objectOf(pieceId);
  const size = reader.sizeOf(pieceId);
  if (object === undefined || size === null) return [];
  const exposure = exposureOf(reader, pieceId);
  const facts: RecordFacts = {
    materials: object.medium ?? '',
    about: [object.type, object.title, object.notes].filter(Boolean).join('; '),
    ...yearsOf(object),
    held: object.source === 'collection' ? 'held' : object.source === 'bought' ? 'bought' : 'lent',
    glazed: object.glazing === 'glass' || object.glazing === 'acrylic',
    cased: isCased(reader, pieceId),
    widthMm: size.widthMm,
    heightMm: size.heightMm,
    sizeKnown: size.known,
    placed: isInShow(reader.where.placeOf(pieceId)),
    ...(exposure === null ? {} : { exposures: [exposure] }),
  };
  const profile = practiceProfileOf(reader.documents);
  const lit = lightOn(reader, pieceId) !== null;
  const key = `${lit}|${exposure?.lux}|${exposure?.hoursPerDay}|${exposure?.days}|${facts.placed}|${facts.cased}|${size.widthMm}|${size.heightMm}|${size.known}`;
  const known = judged.get(object);
  if (known?.key === key && known.profile === profile) return known.cautions;
  // Until a light is planned there is nothing to judge its class by.
  const cautions = recordCautionsOf(facts, profile).filter(({ kind }) => lit || kind !== 'light class not known');
  judged.set(object, { key, profile, cautions });
  return cautions;
}

/** Words of a record are read once; whatever else they were judged by is the key. */
const judged = new WeakMap<
  MuseumObject,
  { readonly key: string; readonly profile: PracticeProfile; readonly cautions: readonly Caution[] }
>();

/** Breaches of what its lender asks, as they stand. */
export function loanCautions(
  reader: ShowReader,
  pieceId: PieceId,
  words: Pick<CautionWords, 'length'>,
): readonly Caution[] {
  const { documents } = reader;
  const objectId = objectOfPiece(pieceId);
  if (!isLent(documents, objectId)) return [];
  const loan = loanOf(documents, objectId);
  const at = reader.where.placeOf(pieceId);
  const glazing = reader.objectOf(pieceId)?.glazing;
  const light = lightOn(reader, pieceId);
  const facts: LoanFacts = {
    status: loan.status,
    from: loan.arrives || loan.from || null,
    to: loan.leaves || loan.to || null,
    showFrom: reader.setting('opens') || null,
    showTo: reader.setting('closes') || null,
    placed: isInShow(at),
    mostLux: loan.mostLux ?? null,
    plannedLux: light?.lux ?? null,
    luxRead: light?.from === 'read',
    asksGlazing: loan.asksGlazing === true,
    glazed: glazing === 'glass' || glazing === 'acrylic',
    asksCase: loan.asksCase === true,
    cased: isCased(reader, pieceId),
    lowestFootMm: loan.lowestFootMm ?? null,
    highestTopMm: loan.highestTopMm ?? null,
    ...heightsOnWall(reader, pieceId, at),
    asksConsent: loan.asksConsent === true,
    sinceConsent: sinceConsent(loan.agreedPlaces?.[pieceId], at),
  };
  return loanCautionsOf(facts, words);
}

/** Placed in a room: what lies on the layout floor neither stands nor hangs yet. */
export function isInShow(at: Place | null): boolean {
  return at !== null && at[0] !== LAYOUT_FLOOR;
}

/** A date is read once a record. */
const years = new WeakMap<MuseumObject, Pick<RecordFacts, 'earliestYear' | 'latestYear'>>();

function yearsOf(object: MuseumObject): Pick<RecordFacts, 'earliestYear' | 'latestYear'> {
  const known = years.get(object);
  if (known !== undefined) return known;
  const { earliest, latest } = dateFrom(object.dateText ?? '');
  const read = { earliestYear: earliest?.year ?? null, latestYear: latest?.year ?? null };
  years.set(object, read);
  return read;
}

/** It stands in something that says it is a case. */
function isCased(reader: ShowReader, pieceId: PieceId): boolean {
  const carrier = carrierOf(reader.where.placeOf(pieceId)?.[0] ?? '');
  const object = carrier === null ? undefined : reader.objectOf(carrier.pieceId);
  return object !== undefined && /\b(?:case|showcase|vitrine|cabinet)\b/i.test(`${object.type ?? ''} ${object.title}`);
}

/** Of its foot and its top above the floor under it, where it hangs on a wall. */
function heightsOnWall(reader: ShowReader, pieceId: PieceId, at: Place | null): Pick<LoanFacts, 'footMm' | 'topMm'> {
  const wall = at === null ? null : reader.where.wallOf(at[0]);
  const size = reader.sizeOf(pieceId);
  if (at === null || wall === null || size === null || !size.known) return { footMm: null, topMm: null };
  const turn = (at[4] * Math.PI) / 18_000;
  const half = (Math.abs(size.widthMm * Math.sin(turn)) + Math.abs(size.heightMm * Math.cos(turn))) / 2;
  const centreMm = at[2] - wall.floorAt(at[1]);
  return { footMm: centreMm - half, topMm: centreMm + half };
}

function sinceConsent(agreed: unknown, at: Place | null): LoanFacts['sinceConsent'] {
  if (!Array.isArray(agreed) || agreed.length !== 5 || at === null) return null;
  if (agreed[0] !== at[0]) return 'elsewhere';
  const far = Math.hypot(at[1] - Number(agreed[1]), at[2] - Number(agreed[2]));
  return Number.isFinite(far) ? far : null;
}
