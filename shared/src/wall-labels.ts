/** Where the works' labels go on a wall, the wall space they take, and what they meet there. */
import type { Box } from '@enfilade/arrangement/boxes';
import type { Caution, CautionWords } from '@enfilade/practice/caution';
import {
  LABEL_SIDES,
  type LabelBox,
  type LabelSide,
  labelPlaceOf,
  labelSizeOf,
  labelWishOf,
} from '@enfilade/practice/labels';
import { vignetteOf } from './commands.ts';
import type { LabelWord } from './label-words.ts';
import { outerBoxOf } from './outer-box.ts';
import { practiceProfileOf } from './practice-limits.ts';
import { type MuseumObject, objectOfPiece, type PieceId, type SurfaceId } from './schema.ts';
import type { ShowReader } from './show-reader.ts';
import { BEFORE_IT_MM } from './whereabouts.ts';

export interface WallLabel extends Box {
  readonly text: string;
  /** What it is of; several share one key where they hang close. */
  readonly pieces: readonly PieceId[];
  readonly side: LabelSide;
  /** A person chose the side. */
  readonly chosen: boolean;
  /** What it lies over, by name; empty where it has room. */
  readonly meets: readonly string[];
}

/** Something on the wall that no label may lie over. */
export interface TakenSpace extends Box {
  readonly name: string;
}

/** With more pieces of one vignette on a wall, a key stands for their labels. Common practice, no source. */
const OWN_LABELS_AT_MOST = 6;

/** What stands on the label of a record: maker, title, date, medium, credit line, number. */
export function labelTextOf(object: MuseumObject): string {
  const lines = [
    object.maker,
    [object.title, object.dateText].filter(Boolean).join(', '),
    object.medium,
    object.creditLine,
    object.number,
  ];
  return lines.filter((line) => line !== undefined && line !== '').join('\n');
}

/** What a person said of a piece's label; null where nobody has. */
export function labelWordOf({ documents }: ShowReader, pieceId: PieceId): LabelWord | null {
  return documents.get('labelSides', pieceId) ?? null;
}

/**
 * Labels of what hangs on a wall, left to right: each on the side somebody chose, or where it has room; one with room
 * nowhere stands where it would, and says what it meets. `taken`: openings, fixtures with their margins. `without`: pieces
 * that are being moved.
 */
export function wallLabelsOf(
  reader: ShowReader,
  surface: SurfaceId,
  taken: readonly TakenSpace[],
  without: ReadonlySet<PieceId>,
): WallLabel[] {
  const wall = reader.where.wallOf(surface);
  if (wall === null) return [];
  const profile = practiceProfileOf(reader.documents);
  const seen = reader.where
    .elevationOf(surface)
    .filter(({ pieceId, direct, standOffMm }) => !without.has(pieceId) && (direct || standOffMm <= BEFORE_IT_MM))
    .map((one) => ({ ...one, ...outerBoxOf(one, one.turnDegrees) }));
  const hung = seen
    .filter(({ direct }) => direct)
    .sort((a, b) => a.xMm - b.xMm || b.yMm - a.yMm || (a.pieceId < b.pieceId ? -1 : 1));
  const works = seen.map((one): TakenSpace => ({ ...boxOf(one), name: nameOf(reader, one.pieceId) }));
  const full: TakenSpace[] = [...taken, ...works];
  const labels: WallLabel[] = [];
  for (const { pieces, text } of groupsOf(
    reader,
    hung.map(({ pieceId }) => pieceId),
  )) {
    const word = pieces.map((pieceId) => labelWordOf(reader, pieceId)).find((said) => said !== null) ?? null;
    if (word === 'none') continue;
    const work = aroundAll(hung.filter(({ pieceId }) => pieces.includes(pieceId)));
    const size = labelSizeOf(text, undefined, profile);
    const within = { lengthMm: wall.lengthMm, floorAt: wall.floorAt, taken: full };
    const sides = word === null ? LABEL_SIDES : [word];
    const free = labelPlaceOf(work, size, within, sides, profile);
    const place = free ?? labelWishOf(work, size, within, word ?? 'right', profile);
    const meets = free === null ? meetings(place, wall.lengthMm, full) : [];
    full.push({ ...boxOf(place), name: `the label of ${nameOf(reader, pieces[0] as PieceId)}` });
    labels.push({ ...place, text, pieces, chosen: word !== null, meets });
  }
  return labels;
}

/** That the label of a piece lies over something, or is too low or high to be read; told of the first of those that share it. */
export function labelCautions(
  reader: ShowReader,
  pieceId: PieceId,
  wall: { floorAt(xMm: number): number },
  labels: readonly WallLabel[],
  words: Pick<CautionWords, 'length'>,
): Caution[] {
  const label = labels.find(({ pieces: [first] }) => first === pieceId);
  if (label === undefined) return [];
  const profile = practiceProfileOf(reader.documents);
  const [foot, top] = [-1, 1].map((up) => label.yMm + (up * label.heightMm) / 2 - wall.floorAt(label.xMm)) as [
    number,
    number,
  ];
  const caution = (what: string, source: string): Caution => ({ kind: 'label without room', what, ask: ASKED, source });
  const cautions: Caution[] = [];
  if (label.meets.length > 0) {
    const where = label.side === 'below' ? 'below it' : `to the ${label.side}`;
    const what = `Its label, ${where}, lies over ${label.meets.join(', ')}. Move one of them, or choose another side.`;
    cautions.push(caution(what, 'common practice, no source'));
  }
  const { labelLowestMm: lowest, labelHighestMm: highest } = profile.limits;
  if (foot < lowest.value - 1) {
    const what = `Its label’s foot is ${words.length(foot)} above the floor; ${words.length(lowest.value)} is the usual least.`;
    cautions.push(caution(what, lowest.source));
  }
  if (top > highest.value + 1) {
    const what = `Its label’s top is ${words.length(top)} above the floor; ${words.length(highest.value)} is the usual most.`;
    cautions.push(caution(what, highest.source));
  }
  return cautions;
}

const ASKED = 'the curator';

/** Names of what a box lies over, the ends of the wall among them. */
function meetings(box: LabelBox, lengthMm: number, taken: readonly TakenSpace[]): string[] {
  const names = taken.filter((other) => meet(box, other)).map(({ name }) => name);
  const beyond = box.xMm - box.widthMm / 2 < 0 || box.xMm + box.widthMm / 2 > lengthMm;
  return [...new Set(names), ...(beyond ? ['the end of the wall'] : [])];
}

/** Touching is not meeting. */
function meet(a: LabelBox, b: LabelBox): boolean {
  return (
    Math.abs(a.xMm - b.xMm) < (a.widthMm + b.widthMm) / 2 - 1e-6 &&
    Math.abs(a.yMm - b.yMm) < (a.heightMm + b.heightMm) / 2 - 1e-6
  );
}

function nameOf(reader: ShowReader, pieceId: PieceId): string {
  const object = reader.objectOf(pieceId);
  return object?.title || object?.number || 'a record that is gone';
}

function groupsOf(
  reader: ShowReader,
  pieces: readonly PieceId[],
): { readonly pieces: readonly PieceId[]; readonly text: string }[] {
  const { documents } = reader;
  const byVignette = new Map<string, number>();
  for (const pieceId of pieces) {
    const id = vignetteOf(documents, pieceId);
    if (id !== null) byVignette.set(id, (byVignette.get(id) ?? 0) + 1);
  }
  const groups = new Map<string, { pieces: PieceId[]; text: string }>();
  for (const pieceId of pieces) {
    const vignetteId = vignetteOf(documents, pieceId);
    const keyed = vignetteId !== null && (byVignette.get(vignetteId) ?? 0) > OWN_LABELS_AT_MOST;
    const id = keyed ? `key ${vignetteId}` : objectOfPiece(pieceId);
    const known = groups.get(id);
    if (known !== undefined) {
      known.pieces.push(pieceId);
      continue;
    }
    const object = reader.objectOf(pieceId);
    const name = vignetteId === null ? '' : (documents.get('vignettes', vignetteId)?.name ?? '');
    const text = keyed
      ? `${name}\nA key to ${byVignette.get(vignetteId)} works and objects`
      : object === undefined
        ? ''
        : labelTextOf(object);
    groups.set(id, { pieces: [pieceId], text });
  }
  return [...groups.values()];
}

function boxOf({ xMm, yMm, widthMm, heightMm }: Box): LabelBox {
  return { xMm, yMm, widthMm, heightMm };
}

function aroundAll(boxes: readonly Box[]): LabelBox {
  const left = Math.min(...boxes.map(({ xMm, widthMm }) => xMm - widthMm / 2));
  const right = Math.max(...boxes.map(({ xMm, widthMm }) => xMm + widthMm / 2));
  const low = Math.min(...boxes.map(({ yMm, heightMm }) => yMm - heightMm / 2));
  const high = Math.max(...boxes.map(({ yMm, heightMm }) => yMm + heightMm / 2));
  return { xMm: (left + right) / 2, yMm: (low + high) / 2, widthMm: right - left, heightMm: high - low };
}
