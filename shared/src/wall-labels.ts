/** Where the works' labels go on a wall, and the wall space they take. */
import type { Box } from '@enfilade/arrangement/boxes';
import { type LabelBox, labelPlaceOf, labelSizeOf } from '@enfilade/practice/labels';
import { vignetteOf } from './commands.ts';
import { practiceProfileOf } from './practice-limits.ts';
import { type MuseumObject, objectOfPiece, type PieceId, type SurfaceId } from './schema.ts';
import type { ShowReader } from './show-reader.ts';

export interface WallLabel extends Box {
  readonly text: string;
  /** What it is of; several share one key where they hang close. */
  readonly pieces: readonly PieceId[];
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

/**
 * Labels of what hangs on a wall, each beside its work where there is room, left to right; a label with room on neither side
 * is left out. `taken`: what nothing may hang over. `without`: pieces that are being moved.
 */
export function wallLabelsOf(
  reader: ShowReader,
  surface: SurfaceId,
  taken: readonly Box[],
  without: ReadonlySet<PieceId>,
): WallLabel[] {
  const wall = reader.where.wallOf(surface);
  if (wall === null) return [];
  const profile = practiceProfileOf(reader.documents);
  const hung = reader.where
    .elevationOf(surface)
    .filter(({ direct, pieceId }) => direct && !without.has(pieceId))
    .sort((a, b) => a.xMm - b.xMm || b.yMm - a.yMm || (a.pieceId < b.pieceId ? -1 : 1));
  const full: LabelBox[] = [...taken, ...hung].map(boxOf);
  const labels: WallLabel[] = [];
  for (const { pieces, text } of groupsOf(
    reader,
    hung.map(({ pieceId }) => pieceId),
  )) {
    const work = aroundAll(hung.filter(({ pieceId }) => pieces.includes(pieceId)));
    const place = labelPlaceOf(
      work,
      labelSizeOf(text, undefined, profile),
      { lengthMm: wall.lengthMm, floorMm: wall.floorAt(work.xMm), taken: full },
      'right',
      profile,
    );
    if (place === null) continue;
    full.push(place);
    labels.push({ ...place, text, pieces });
  }
  return labels;
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
