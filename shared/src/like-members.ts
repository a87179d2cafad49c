/** Members of a vignette as practice lists them: like things on one line, with their count and their numbers. */
import { runsText } from './runs-text.ts';
import { type PieceId, pieceNumberOf, type Source } from './schema.ts';

/** A record's share in a vignette. */
export interface VignetteMembers {
  readonly objectId: string;
  readonly objectNumber: string;
  readonly title: string;
  readonly source: Source;
  readonly lender: string;
  /** Pieces of this record in the vignette, how many of them have a place, and how many the record counts. */
  readonly pieces: number;
  readonly placed: number;
  readonly of: number;
  /** Which of its pieces, ascending. */
  readonly pieceNumbers: readonly number[];
}

export interface LikeMembers {
  /** 'Copper mould, 27 pieces', 'Cloth-printing blocks, 41 of 60'. */
  readonly text: string;
  /** 'OM 1919.22.1–20, 22–28'; of part of a set its pieces too: '1902.7.1–60, pieces 1–41'. */
  readonly numbers: string;
  readonly unplaced: number;
  readonly members: readonly VignetteMembers[];
}

/** Fewer than these stand on lines of their own. Own rule. */
const LIKE_FROM = 3;

/**
 * Members without the focal piece, the largest share first. Records are alike when they are single things of one source
 * and lender whose titles are the same up to the first comma.
 */
export function likeMembersOf(members: readonly VignetteMembers[], focal: PieceId | null): LikeMembers[] {
  const groups = new Map<string, VignetteMembers[]>();
  for (const member of members) {
    const rest = focal === null ? member : withoutPiece(member, focal);
    if (rest === null) continue;
    const key = rest.of > 1 ? rest.objectId : [headOf(rest.title), rest.source, rest.lender].join('\n');
    groups.set(key, [...(groups.get(key) ?? []), rest]);
  }
  return [...groups.values()]
    .flatMap((group) => (group.length < LIKE_FROM ? group.map((member) => [member]) : [group]))
    .map(lineOf)
    .sort((a, b) => piecesOf(b) - piecesOf(a) || compareNumbers(a.numbers, b.numbers));
}

function lineOf(members: readonly VignetteMembers[]): LikeMembers {
  const [first] = members as readonly [VignetteMembers];
  const unplaced = members.reduce((sum, { pieces, placed }) => sum + pieces - placed, 0);
  if (members.length > 1) {
    const titles = new Set(members.map(({ title }) => title));
    const title = titles.size === 1 ? first.title : headOf(first.title);
    const numbers = numbersText(members.map(({ objectNumber }) => objectNumber));
    return { text: `${title}, ${members.length} pieces`, numbers, unplaced, members };
  }
  const part = first.of > 1 && first.pieces < first.of;
  const which = part
    ? `${first.objectNumber === '' ? '' : ', '}${first.pieces === 1 ? 'piece' : 'pieces'} ${runsText(first.pieceNumbers)}`
    : '';
  return { text: memberText(first), numbers: `${first.objectNumber}${which}`, unplaced, members };
}

/** 'Weir, rising', 'Cloth-printing blocks, 41 of 60', 'Cloth-printing blocks, all 60': a record's share in words. */
export function memberText({ title, pieces, of }: Pick<VignetteMembers, 'title' | 'pieces' | 'of'>): string {
  if (of <= 1) return title;
  return pieces === of ? `${title}, all ${of}` : `${title}, ${pieces} of ${of}`;
}

function withoutPiece(member: VignetteMembers, piece: PieceId): VignetteMembers | null {
  if (piece.slice(0, piece.lastIndexOf('#')) !== member.objectId) return member;
  const number = pieceNumberOf(piece);
  if (!member.pieceNumbers.includes(number)) return member;
  if (member.pieces <= 1) return null;
  const pieceNumbers = member.pieceNumbers.filter((other) => other !== number);
  return { ...member, pieces: member.pieces - 1, placed: Math.min(member.placed, member.pieces - 1), pieceNumbers };
}

function piecesOf({ members }: LikeMembers): number {
  return members.reduce((sum, { pieces }) => sum + pieces, 0);
}

function headOf(title: string): string {
  return (title.split(',')[0] ?? '').trim();
}

/** Object numbers with their runs drawn together: 'OM 1919.22.1–3, 7; L.2026.33'. */
export function numbersText(numbers: readonly string[]): string {
  const byStem = new Map<string, number[]>();
  const single: string[] = [];
  for (const number of numbers) {
    // A last figure with noughts before it is a figure written in another way, and stays as it is.
    const [, stem = '', figure = ''] = /^(.*\D)([1-9]\d{0,8})$/.exec(number) ?? [];
    if (stem === '') single.push(number);
    else byStem.set(stem, [...(byStem.get(stem) ?? []), Number(figure)]);
  }
  const runs = [...byStem].map(([stem, figures]) => `${stem}${runsText(figures)}`);
  return [...runs, ...single.filter((number) => number !== '')].sort(compareNumbers).join('; ');
}

/** Figures within by their size: 1919.22.9 before 1919.22.10. */
export function compareNumbers(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}
