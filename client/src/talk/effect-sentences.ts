/** What a proposal does beyond its moves, told shortly: things alike in one line, each with the mark it bears. Pure. */
import type { ReadingWord } from '@enfilade/colour/reading-thresholds';
import type { Effects } from '@enfilade/shared/proposal-effects';
import { objectOfPiece, type PieceId } from '@enfilade/shared/schema';

export interface EffectWords {
  nameOf(pieceId: PieceId): string;
  /** The record's title: 'Printing blocks'. */
  titleOf(pieceId: PieceId): string;
  vignetteName(vignetteId: string): string;
  length(mm: number): string;
  /** The gap the show keeps between things, mm. */
  readonly gapMm: number;
}

export interface EffectLine {
  readonly mark:
    | { readonly kind: 'reading'; readonly word: ReadingWord }
    | { readonly kind: 'gap' | 'caution' | 'changed since' };
  /** Set in the serif italic: what it is about. */
  readonly about: string;
  readonly rest: string;
  /** Selected when pressed. */
  readonly pieces: readonly PieceId[];
}

export function effectLines(effects: Effects, words: EffectWords): EffectLine[] {
  return [
    ...readingLines(effects, words),
    ...signLines(effects, words),
    ...gapLines(effects, words),
    ...cautionLines(effects, words),
  ];
}

function readingLines({ readings }: Effects, words: EffectWords): EffectLine[] {
  const groups = new Map<string, { pieces: PieceId[]; from: ReadingWord | null; to: ReadingWord }>();
  for (const { pieceId, from, to } of readings) {
    // What is no longer on a painted wall reads as nothing; its move says so.
    if (to === null) continue;
    const key = `${objectOfPiece(pieceId)}|${from}|${to}`;
    const group = groups.get(key) ?? { pieces: [], from, to };
    group.pieces.push(pieceId);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ pieces, from, to }) => ({
    mark: { kind: 'reading', word: to },
    about: namedTogether(pieces, words),
    rest: from === null ? `: ${to} there` : `: ${from} → ${to}`,
    pieces,
  }));
}

function namedTogether(pieces: readonly PieceId[], words: EffectWords): string {
  const [first] = pieces as [PieceId];
  return pieces.length === 1 ? words.nameOf(first) : `${pieces.length} of ${words.titleOf(first)}`;
}

function signLines({ signOffs }: Effects, words: EffectWords): EffectLine[] {
  return signOffs.map(({ vignetteId, changes }) => ({
    mark: { kind: 'changed since' },
    about: words.vignetteName(vignetteId),
    rest: ' would be changed since it was signed',
    pieces: changes.flatMap((change) => ('pieceId' in change ? [change.pieceId] : [])),
  }));
}

/** Only what becomes too close: a gap that was under the show's before is no news. */
function gapLines({ gaps }: Effects, words: EffectWords): EffectLine[] {
  const over = gaps.filter(({ fromMm, toMm }) => toMm !== null && toMm < 0 && !(fromMm !== null && fromMm < 0));
  const close = gaps.filter(
    ({ fromMm, toMm }) =>
      toMm !== null && toMm >= 0 && toMm < words.gapMm && !(fromMm !== null && fromMm < words.gapMm),
  );
  const gap = words.length(words.gapMm);
  const lines: EffectLine[] = [];
  for (const [group, one, many] of [
    [over, (mm: number) => ` overlaps its neighbour by ${words.length(-mm)}`, 'overlap their neighbours'],
    [
      close,
      (mm: number) => `: ${words.length(mm)} to its neighbour, under the ${gap} kept`,
      `come closer than the ${gap} kept`,
    ],
  ] as const) {
    const pieces = group.map(({ pieceId }) => pieceId);
    if (group.length > MANY)
      lines.push({ mark: { kind: 'gap' }, about: `${group.length} pieces`, rest: ` ${many}`, pieces });
    else {
      for (const { pieceId, toMm } of group) {
        lines.push({ mark: { kind: 'gap' }, about: words.nameOf(pieceId), rest: one(toMm ?? 0), pieces: [pieceId] });
      }
    }
  }
  return lines;
}

const MANY = 3;

function cautionLines({ cautions }: Effects, words: EffectWords): EffectLine[] {
  const groups = new Map<string, { pieces: PieceId[]; what: string; goes: boolean }>();
  for (const { pieceId, comes, goes } of cautions) {
    for (const [sentences, going] of [
      [comes, false],
      [goes, true],
    ] as const) {
      for (const what of sentences) {
        const key = `${objectOfPiece(pieceId)}|${going}|${what}`;
        const group = groups.get(key) ?? { pieces: [], what, goes: going };
        group.pieces.push(pieceId);
        groups.set(key, group);
      }
    }
  }
  return [...groups.values()].map(({ pieces, what, goes }) => ({
    mark: { kind: 'caution' },
    about: namedTogether(pieces, words),
    rest: goes ? `, no longer: ${what}` : `: ${what}`,
    pieces,
  }));
}
