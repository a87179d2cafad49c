/** What a move of a proposal does, in words a person reads: its title on the card, and a sentence of how. Pure. */
import { type MoveFact, type ProposedMove, placesOfMove } from '@enfilade/shared/proposal-moves';
import { carrierOf, type PaintId, type PieceId, type Place, type SurfaceId } from '@enfilade/shared/schema';

export interface MoveWords {
  nameOf(pieceId: PieceId): string;
  /** 'east wall', 'Long bench, top': what a place is on, without the room. */
  onName(on: string): string;
  /** 'Dye House, east wall': with the room, where a thing comes from another one. */
  onNameWhole(on: string): string;
  vignetteName(vignetteId: string): string;
  paintName(paintId: PaintId): string;
  /** Its light reflectance value, in words: '57'; null where the paint is gone. */
  lrvOf(paintId: PaintId): string | null;
  /** A length without its unit. */
  length(mm: number): string;
}

/** 'The valley from Tallow Hill', 'Paint the east wall Weld', 'Gather Sixty impressions'. */
export function moveTitle(move: ProposedMove, words: MoveWords): string {
  const { about } = move;
  if (about.kind === 'piece') return words.nameOf(about.pieceId);
  if (about.kind === 'wall') {
    const to = move.facts[0]?.to;
    const name = words.onName(about.surface);
    return typeof to === 'string' ? `Paint the ${name} ${words.paintName(to)}` : `No paint on the ${name}`;
  }
  const base = factOf(move, about.vignetteId);
  const name = words.vignetteName(about.vignetteId);
  if (base !== undefined && base.from === undefined) return `Gather ${name}`;
  return factOf(move, `${about.vignetteId}/removed`)?.to === true ? `Ungroup ${name}` : `Reword ${name}`;
}

/** Each thing the move does, as one sentence with its stop. Empty for nothing. */
export function moveSentence(move: ProposedMove, words: MoveWords): string {
  const { about } = move;
  if (about.kind === 'wall') return wallSentence(move, words);
  if (about.kind === 'vignette') return vignetteSentence(move, about.vignetteId);
  const parts: string[] = [];
  const places = placesOfMove(move);
  if (places !== null) parts.push(placeSentence(places.from, places.to, words));
  const member = move.facts.find(({ root }) => root === 'memberOf');
  if (member !== undefined) parts.push(memberSentence(member, words));
  const pin = move.facts.find(({ root }) => root === 'pinned');
  if (pin !== undefined) parts.push(pinSentence(pin.to));
  return parts
    .filter((part) => part !== '')
    .map((part) => `${part.charAt(0).toUpperCase()}${part.slice(1)}.`)
    .join(' ');
}

function factOf(move: ProposedMove, key: string): MoveFact | undefined {
  return move.facts.find((fact) => fact.key === key);
}

function wallSentence(move: ProposedMove, words: MoveWords): string {
  const fact = move.facts[0];
  const from = typeof fact?.from === 'string' ? words.paintName(fact.from) : 'no paint';
  const to = typeof fact?.to === 'string' ? words.paintName(fact.to) : 'no paint';
  const lrv = (paintId: unknown): string | null => (typeof paintId === 'string' ? words.lrvOf(paintId) : null);
  const [before, after] = [lrv(fact?.from), lrv(fact?.to)];
  return `From ${from} to ${to}.${before === null || after === null ? '' : ` LRV ${before} → ${after}.`}`;
}

function vignetteSentence(move: ProposedMove, vignetteId: string): string {
  const base = factOf(move, vignetteId);
  const intent = factOf(move, `${vignetteId}/intent`)?.to ?? (base?.to as { intent?: string } | undefined)?.intent;
  if (factOf(move, `${vignetteId}/removed`)?.to === true) return 'Its pieces stay where they are.';
  const told: string[] = [];
  const renamed = factOf(move, `${vignetteId}/name`);
  if (typeof renamed?.to === 'string') told.push(`Named ${renamed.to}.`);
  if (typeof intent === 'string' && intent !== '') told.push(intent);
  if (factOf(move, `${vignetteId}/focal`) !== undefined) told.push('Another focal work.');
  return told.join(' ') || 'A vignette of its own.';
}

function memberSentence({ from, to }: MoveFact, words: MoveWords): string {
  if (typeof to === 'string') {
    const joins = `joins ${words.vignetteName(to)}`;
    return typeof from === 'string' ? `${joins}, out of ${words.vignetteName(from)}` : joins;
  }
  return typeof from === 'string' ? `leaves ${words.vignetteName(from)}` : '';
}

/** What a pin, or none, says of a piece, in a list and in a clash. */
export function pinSentence(pinned: unknown): string {
  return pinned === true ? 'pinned where it is' : 'free to give way';
}

/** 'up 24.0, right 8.0', 'comes from the unplaced, onto the bench': from one place to another. */
export function placeSentence(from: Place | null, to: Place | null, words: MoveWords): string {
  if (to === null) return from === null ? '' : 'goes back to the unplaced';
  if (from === null) return `comes from the unplaced, ${ontoText(to[0], words)}`;
  if (from[0] !== to[0]) {
    return sameRoom(from[0], to[0])
      ? `from the ${lower(words.onName(from[0]))} ${ontoText(to[0], words)}`
      : `from the ${words.onNameWhole(from[0])}, to the ${words.onNameWhole(to[0])}`;
  }
  const ways = wayText(from, to, words);
  const along = carrierOf(to[0]) === null ? '' : `, on the ${lower(words.onName(to[0]))}`;
  return ways === '' ? 'as it is' : `${ways}${along}`;
}

function wayText(from: Place, to: Place, words: MoveWords): string {
  const overhead = to[0].endsWith(':ceiling');
  const flat = overhead || to[0].endsWith(':floor') || carrierOf(to[0]) !== null;
  const [up, down] = flat ? ['back', 'forward'] : ['up', 'down'];
  const parts: string[] = [];
  const dy = to[2] - from[2];
  const dx = to[1] - from[1];
  if (Math.abs(dy) >= 1) parts.push(`${dy > 0 ? up : down} ${words.length(Math.abs(dy))}`);
  if (Math.abs(dx) >= 1) parts.push(`${dx > 0 ? 'right' : 'left'} ${words.length(Math.abs(dx))}`);
  const turn = ((to[4] - from[4] + 54000) % 36000) - 18000;
  if (turn !== 0) {
    parts.push(`turned ${Number((Math.abs(turn) / 100).toFixed(1))}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}`);
  }
  const lift = to[3] - from[3];
  if (lift !== 0 && overhead) parts.push(`hangs ${words.length(Math.abs(lift))} ${lift > 0 ? 'lower' : 'higher'}`);
  else if (lift !== 0) parts.push(`stands off ${words.length(Math.abs(lift))} ${lift > 0 ? 'more' : 'less'}`);
  return parts.join(', ');
}

function ontoText(on: string, words: MoveWords): string {
  return `${on.startsWith('opening:') ? 'into' : 'onto'} the ${lower(words.onName(on))}`;
}

/** A record's title keeps its capital only where the sentence needs none before it: 'the long bench'. */
function lower(text: string): string {
  return text.replace(/, top$/, '').replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase());
}

function sameRoom(a: string, b: string): boolean {
  const room = (on: string): string => on.slice(0, on.indexOf(':'));
  return room(a) === room(b) || carrierOf(a) !== null || carrierOf(b) !== null;
}

/** Where a thing is, whole: 'east wall, centre 150.0 high, 513.0 from the left corner'. */
export function placeText(at: Place | null, words: MoveWords): string {
  if (at === null) return 'unplaced';
  const on = words.onNameWhole(at[0]).replace(/, top$/, '');
  if (carrierOf(at[0]) !== null) return `on the ${lower(on)}, ${words.length(at[1])} from its left end`;
  if (at[0] === 'layout' || at[0].endsWith(':floor') || at[0].endsWith(':ceiling')) {
    return `${on}, ${words.length(at[1])} from the left, ${words.length(at[2])} from the entrance wall`;
  }
  return `${on}, centre ${words.length(at[2])} high, ${words.length(at[1])} from the left corner`;
}

/** The surfaces a fact of a move is about; a carrier's load is where `surfaceOf` says its carrier stands. */
export function surfacesOfMove(move: ProposedMove, surfaceOf: (on: string) => SurfaceId | null): SurfaceId[] {
  if (move.about.kind === 'wall') return [move.about.surface];
  const places = placesOfMove(move);
  const found = new Set<SurfaceId>();
  for (const at of [places?.from ?? null, places?.to ?? null]) {
    const surface = at === null ? null : surfaceOf(at[0]);
    if (surface !== null) found.add(surface);
  }
  return [...found];
}
