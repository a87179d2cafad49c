/** What changed since a signature, in words a person reads: used by captions, the vignette list and paper. Pure. */
import type { PieceId } from './schema.ts';
import type { VignetteChange } from './sign-off.ts';

export interface ChangeWords {
  nameOf(pieceId: PieceId): string;
  /** 'east wall', 'Long bench, top': what a place is on. */
  surfaceName(on: string): string;
  /** A length without its unit. */
  length(mm: number): string;
  /** What a piece is on now; on a floor, moves are told by the room and not by up and down. */
  onOf?(pieceId: PieceId): string | null;
}

/** One sentence a change, in the order given; the first letter as in the middle of a text. */
export function changeSentences(changes: readonly VignetteChange[], words: ChangeWords): string[] {
  return changes.map((change) => sentenceOf(change, words));
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

function sentenceOf(change: VignetteChange, words: ChangeWords): string {
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
      return `${words.nameOf(change.pieceId)} in`;
    case 'left':
      return `${words.nameOf(change.pieceId)} out`;
    case 'placed':
      return `${words.nameOf(change.pieceId)} placed`;
    case 'put back':
      return `${words.nameOf(change.pieceId)} put back to the unplaced`;
    case 'moved':
      return `${words.nameOf(change.pieceId)} moved ${wayOf(change, words)}`;
    case 'moved elsewhere':
      return `${words.nameOf(change.pieceId)} moved from ${words.surfaceName(change.from)} to ${words.surfaceName(change.to)}`;
    case 'turned': {
      const degrees = Math.abs(change.byCentidegrees) / 100;
      const way = change.byCentidegrees > 0 ? 'clockwise' : 'anticlockwise';
      return `${words.nameOf(change.pieceId)} turned ${Number(degrees.toFixed(1))}° ${way}`;
    }
    case 'lifted':
      return `${words.nameOf(change.pieceId)} stands off ${words.length(Math.abs(change.byMm))} ${change.byMm > 0 ? 'more' : 'less'}`;
    case 'repainted':
      return `${words.surfaceName(change.surface)} repainted${change.from === null ? '' : ` from ${change.from}`}${
        change.to === null ? ', to no paint' : ` to ${change.to}`
      }`;
  }
}

/** '6.0 left', '6.0 left and 2.0 up'; a part that rounds to nothing beside the other is not told. */
function wayOf(change: { pieceId: PieceId; dxMm: number; dyMm: number }, words: ChangeWords): string {
  const on = words.onOf?.(change.pieceId) ?? null;
  const floor = on !== null && (on.endsWith(':floor') || on.startsWith('carrier:'));
  const [up, down] = floor ? ['back', 'forward'] : ['up', 'down'];
  const parts: string[] = [];
  if (Math.abs(change.dxMm) >= 1)
    parts.push(`${words.length(Math.abs(change.dxMm))} ${change.dxMm < 0 ? 'left' : 'right'}`);
  if (Math.abs(change.dyMm) >= 1) parts.push(`${words.length(Math.abs(change.dyMm))} ${change.dyMm > 0 ? up : down}`);
  return parts.join(' and ');
}
