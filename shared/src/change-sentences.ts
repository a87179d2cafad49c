/** What changed since a signature, in words a person reads: used by captions, the vignette list and paper. Pure. */
import { objectOfPiece, type PieceId } from './schema.ts';
import type { VignetteChange } from './sign-off.ts';

export interface ChangeWords {
  nameOf(pieceId: PieceId): string;
  /** 'east wall', 'Long bench, top': what a place is on. */
  surfaceName(on: string): string;
  /** A length, as the reader reads it. */
  length(mm: number): string;
  /** What a piece is on now; on a floor, moves are told by the room and not by up and down. */
  onOf?(pieceId: PieceId): string | null;
  /** The record a piece is of. With it like changes are counted; without it every piece is told by itself. */
  recordOf?(pieceId: PieceId): { readonly title: string; readonly count: number } | null;
}

/** So many pieces of a set, or single things, that changed alike are told in one sentence. Own rule. */
const ALIKE = { ofSet: 2, single: 3 } as const;
/** Moved or turned in more ways than these, they are told by the farthest. Own rule. */
const WAYS = { ofSet: 3, single: 6 } as const;

/**
 * One sentence a change, like changes drawn into one: 'Printing blocks: 41 pieces moved 3.0 left'. In the order given;
 * the first letter as in the middle of a text.
 */
export function changeSentences(changes: readonly VignetteChange[], words: ChangeWords): string[] {
  const told = changes.map((change) => toldOf(change, words));
  const sizes = countedBy(told, ({ group, predicate }) => group && `${group.key}\n${predicate}`);
  const ways = new Map<string, Set<string>>();
  for (const { group, predicate, farthest } of told) {
    if (group === null || farthest === null) continue;
    const key = `${group.key}\n${farthest.verb}`;
    ways.set(key, (ways.get(key) ?? new Set()).add(predicate));
  }
  const done = new Set<string>();
  return told.flatMap((one): string[] => {
    const { group, predicate, farthest } = one;
    if (group === null) return [one.sentence];
    const manyWays = farthest === null ? undefined : `${group.key}\n${farthest.verb}`;
    if (manyWays !== undefined && (ways.get(manyWays)?.size ?? 0) > WAYS[group.kind]) {
      if (done.has(manyWays)) return [];
      done.add(manyWays);
      return [farthestSentence(told, group, farthest?.verb ?? '')];
    }
    const key = `${group.key}\n${predicate}`;
    const size = sizes.get(key) ?? 1;
    if (size < ALIKE[group.kind] && !(one.counted && group.kind === 'ofSet')) return [one.sentence];
    if (done.has(key)) return [];
    done.add(key);
    return [`${group.head}${size === 1 ? 'one piece' : `${size} pieces`} ${one.counted ?? predicate}`];
  });
}

/** All of it as one text: 'Block 10 moved 6.0 left; east wall repainted from … to …'. Empty for no changes. */
export function changeText(changes: readonly VignetteChange[], words: ChangeWords, most = 4): string {
  const sentences = changeSentences(changes, words);
  const told = sentences.slice(0, sentences.length > most ? most - 1 : most);
  const rest = sentences.length - told.length;
  const text = rest > 0 ? [...told, `and ${rest} more`].join('; ') : told.join('; ');
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** The pieces that changes are about, each once. */
export function piecesIn(changes: readonly VignetteChange[]): PieceId[] {
  const pieces = new Set<PieceId>();
  for (const change of changes) {
    if ('pieceId' in change) pieces.add(change.pieceId);
    else if (change.kind === 'focal' && change.to !== null) pieces.add(change.to);
  }
  return [...pieces];
}

/** Pieces that may be told together: those of one set, or all that are single things. */
interface Group {
  readonly key: string;
  readonly kind: 'ofSet' | 'single';
  readonly head: string;
}

interface Told {
  readonly sentence: string;
  readonly predicate: string;
  /** Null where it is about no piece, or pieces are not counted. */
  readonly group: Group | null;
  /** The words for a count of a set's pieces, where they are others: 'more', 'fewer'. */
  readonly counted: string | null;
  /** How far, of what can be done in many ways. */
  readonly farthest: { readonly verb: string; readonly by: number; readonly text: string } | null;
}

function toldOf(change: VignetteChange, words: ChangeWords): Told {
  const predicate = predicateOf(change, words);
  if (!('pieceId' in change)) return { sentence: predicate, predicate, group: null, counted: null, farthest: null };
  const sentence = `${words.nameOf(change.pieceId)} ${predicate}`;
  const record = words.recordOf?.(change.pieceId) ?? null;
  const group: Group | null =
    record === null
      ? null
      : record.count > 1
        ? { key: objectOfPiece(change.pieceId), kind: 'ofSet', head: `${record.title}: ` }
        : { key: '', kind: 'single', head: '' };
  const counted = change.kind === 'joined' ? 'more' : change.kind === 'left' ? 'fewer' : null;
  return { sentence, predicate, group, counted, farthest: farthestOf(change, words) };
}

function farthestOf(change: VignetteChange, words: ChangeWords): Told['farthest'] {
  if (change.kind === 'moved') {
    const by = Math.hypot(change.dxMm, change.dyMm);
    return { verb: 'moved', by, text: words.length(Math.round(by)) };
  }
  if (change.kind === 'turned') {
    const by = Math.abs(change.byCentidegrees) / 100;
    return { verb: 'turned', by, text: `${Number(by.toFixed(1))}°` };
  }
  return null;
}

function farthestSentence(told: readonly Told[], group: Group, verb: string): string {
  const alike = told.filter((one) => one.group?.key === group.key && one.farthest?.verb === verb);
  const most = alike.reduce((a, b) => ((b.farthest?.by ?? 0) > (a.farthest?.by ?? 0) ? b : a));
  return `${group.head}${alike.length} pieces ${verb}, by up to ${most.farthest?.text}`;
}

function countedBy<T>(all: readonly T[], keyOf: (one: T) => string | null): Map<string, number> {
  const counts = new Map<string, number>();
  for (const one of all) {
    const key = keyOf(one);
    if (key !== null) counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

/** What is said of the piece; the whole sentence where it is about none. */
function predicateOf(change: VignetteChange, words: ChangeWords): string {
  switch (change.kind) {
    case 'renamed':
      return `renamed from ‘${change.from}’ to ‘${change.to}’`;
    case 'intent':
      return change.to === '' ? 'its intent taken away' : 'its intent reworded';
    case 'focal':
      return change.to === null
        ? `${change.from === null ? 'its focal work' : words.nameOf(change.from)} no longer its focal work`
        : `${words.nameOf(change.to)} made its focal work`;
    case 'joined':
      return 'in';
    case 'left':
      return 'out';
    case 'placed':
      return 'placed';
    case 'put back':
      return 'put back to the unplaced';
    case 'moved':
      return `moved ${wayOf(change, words)}`;
    case 'moved elsewhere':
      return `moved from ${words.surfaceName(change.from)} to ${words.surfaceName(change.to)}`;
    case 'turned': {
      const degrees = Math.abs(change.byCentidegrees) / 100;
      const way = change.byCentidegrees > 0 ? 'clockwise' : 'anticlockwise';
      return `turned ${Number(degrees.toFixed(1))}° ${way}`;
    }
    case 'lifted':
      return words.onOf?.(change.pieceId)?.endsWith(':ceiling') === true
        ? `hangs ${words.length(Math.abs(change.byMm))} ${change.byMm > 0 ? 'lower' : 'higher'}`
        : `stands off ${words.length(Math.abs(change.byMm))} ${change.byMm > 0 ? 'more' : 'less'}`;
    case 'repainted':
      return `${words.surfaceName(change.surface)} repainted${change.from === null ? '' : ` from ${change.from}`}${
        change.to === null ? ', to no paint' : ` to ${change.to}`
      }`;
  }
}

/** '6.0 left', '6.0 left and 2.0 up'; a part that rounds to nothing beside the other is not told. */
function wayOf(change: { pieceId: PieceId; dxMm: number; dyMm: number }, words: ChangeWords): string {
  const on = words.onOf?.(change.pieceId) ?? null;
  const floor = on !== null && (/:(floor|ceiling)$/.test(on) || on.startsWith('carrier:'));
  const [up, down] = floor ? ['back', 'forward'] : ['up', 'down'];
  const parts: string[] = [];
  if (Math.abs(change.dxMm) >= 1)
    parts.push(`${words.length(Math.abs(change.dxMm))} ${change.dxMm < 0 ? 'left' : 'right'}`);
  if (Math.abs(change.dyMm) >= 1) parts.push(`${words.length(Math.abs(change.dyMm))} ${change.dyMm > 0 ? up : down}`);
  return parts.join(' and ');
}
