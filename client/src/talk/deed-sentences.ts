/** Who did what, as a person says it: 'moved High water 12.0 left', 'hung 41 pieces on Dye House, east wall'. Pure. */
import type { Deed, DeedChange } from '@enfilade/shared/deeds';
import type { Judgements } from '@enfilade/shared/judgements';
import { proposedKeyParts } from '@enfilade/shared/proposals';
import { objectOfPiece, type PieceId, type Place, type RootName, type Sample } from '@enfilade/shared/schema';
import { onName, surfaceName } from '@enfilade/shared/surface-names';
import type { CollectionWord, DeclinedWord, ProposalOutcome, Remark, SampleWord } from '@enfilade/shared/talk';
import { aboutName } from './about-name.ts';

export interface DeedWords {
  readonly judgements: Judgements;
  /** A length with its unit. */
  length(mm: number): string;
}

/** What was done, without the name of who did it. */
export function deedSentence({ changes, more }: Pick<Deed, 'changes' | 'more'>, words: DeedWords): string {
  const byRoot = new Map<RootName, DeedChange[]>();
  for (const change of changes) byRoot.set(change.root, [...(byRoot.get(change.root) ?? []), change]);
  // The first root that has something to say names the deed; what goes with it is its consequence.
  for (const [root, tell] of TELLERS) {
    const own = byRoot.get(root);
    const text = own === undefined ? null : tell(own, words, more, changes);
    if (text !== null) return text;
  }
  return 'changed something';
}

type Teller = (own: readonly DeedChange[], words: DeedWords, more: number, all: readonly DeedChange[]) => string | null;

function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

function fieldOf(key: string): string | null {
  const cut = key.indexOf('/');
  return cut < 0 ? null : key.slice(cut + 1);
}

function idOf(key: string): string {
  return key.split('/')[0] as string;
}

const tellProposals: Teller = (own, { judgements }) => {
  for (const { key, to } of own) {
    const title = judgements.documents.get('proposals', idOf(key))?.title ?? 'a proposal';
    const field = fieldOf(key);
    if (field === null) return `proposed ${title}`;
    if (field === 'outcome') {
      const outcome = (to as ProposalOutcome | null | undefined)?.outcome;
      if (!outcome) return `reopened ${title}`;
      return outcome === 'taken'
        ? `took ${title}`
        : outcome === 'taken in part'
          ? `took part of ${title}`
          : `${outcome === 'declined' ? 'declined' : 'withdrew'} ${title}`;
    }
    return field === 'removed' ? `took ${title} away` : `reworded ${title}`;
  }
  return null;
};

const tellProposed: Teller = (own, { judgements }) => {
  const id = proposedKeyParts(own[0]?.key ?? '')?.id ?? '';
  return `worked in the proposal ${judgements.documents.get('proposals', id)?.title ?? 'that is gone'}`;
};

const tellRemarks: Teller = ([first], { judgements }) => {
  if (first === undefined) return null;
  const field = fieldOf(first.key);
  const said = judgements.documents.get('remarks', idOf(first.key)) ?? (field === null ? first.to : undefined);
  const { about, of } = (said ?? {}) as Partial<Remark>;
  const on = about === undefined ? '' : ` on ${aboutName(judgements, about)}`;
  if (field === null) return of === undefined ? `remarked${on}` : `answered a remark${on}`;
  if (field === 'settled') return `${first.to ? 'settled' : 'reopened'} a remark${on}`;
  return field === 'asked' ? `asked for an answer${on}` : `took a remark back${on}`;
};

/** What a thing is called, even when it has been taken away since. */
function calledOf(judgements: Judgements, root: 'vignettes' | 'objects', id: string, otherwise: string): string {
  const { documents } = judgements;
  const field = root === 'vignettes' ? 'name' : 'title';
  const edited = documents.stored(root, `${id}/${field}`);
  if (typeof edited === 'string') return edited;
  const base = documents.stored(root, id);
  const name = typeof base === 'object' && base !== null ? (base as Record<string, unknown>)[field] : undefined;
  return typeof name === 'string' && name !== '' ? name : otherwise;
}

const tellVignettes: Teller = (own, { judgements }, _more, all) => {
  const [first] = own;
  if (first === undefined) return null;
  const id = idOf(first.key);
  const name = calledOf(judgements, 'vignettes', id, 'a vignette');
  const field = fieldOf(first.key);
  if (field === 'removed') return first.to === true ? `ungrouped ${name}` : `brought ${name} back`;
  if (field === null) {
    const members = all.filter(({ root, to }) => root === 'memberOf' && to === id).length;
    return first.to === undefined
      ? `took ${name} away`
      : `gathered ${name}${members > 0 ? ` of ${count(members, 'piece')}` : ''}`;
  }
  return field === 'name' ? `renamed ${String(first.from ?? '')} to ${String(first.to ?? '')}` : `reworded ${name}`;
};

const tellMembers: Teller = (own, { judgements }) => {
  const vignetteName = (id: unknown): string => calledOf(judgements, 'vignettes', String(id), 'a vignette');
  const [first] = own;
  if (first === undefined) return null;
  const what = piecesText(
    own.map(({ key }) => key),
    judgements,
  );
  return first.to === undefined
    ? `took ${what} out of ${vignetteName(first.from)}`
    : `put ${what} in ${vignetteName(first.to)}`;
};

const tellPaints: Teller = (own, { judgements }) => {
  const [first] = own;
  if (first === undefined) return null;
  const paint = first.to === undefined ? null : judgements.documents.get('deck', String(first.to))?.name;
  const walls = own.length === 1 ? surfaceName(judgements.documents, first.key) : count(own.length, 'wall');
  return paint === null ? `took the paint off ${walls}` : `painted ${walls} ${paint ?? 'a paint that is gone'}`;
};

const tellPlaces: Teller = (own, words, more) => {
  const { judgements } = words;
  const what = piecesText(
    own.map(({ key }) => key),
    judgements,
    more,
  );
  const placed = own.filter(({ to }) => to !== undefined);
  if (placed.length === 0) return `put ${what} back`;
  const [first] = placed;
  const [from, to] = [first?.from as Place | undefined, first?.to as Place];
  const onto = onName(judgements, to[0]);
  if (own.length > 1) {
    if (own.every((change) => (change.from as Place | undefined)?.[0] === to[0])) return `moved ${what}, ${onto}`;
    return `set ${what} on ${onto}`;
  }
  if (from === undefined) return `placed ${what}, ${onto}`;
  if (from[0] !== to[0]) return `moved ${what} to ${onto}`;
  const floor = to[0].endsWith(':floor') || to[0].startsWith('carrier:') || to[0] === 'layout';
  const [dx, dy] = [to[1] - from[1], to[2] - from[2]];
  const way = [
    dx === 0 ? '' : `${words.length(Math.abs(dx))} ${dx < 0 ? 'left' : 'right'}`,
    dy === 0 ? '' : `${words.length(Math.abs(dy))} ${dy > 0 ? (floor ? 'back' : 'up') : floor ? 'forward' : 'down'}`,
  ].filter((text) => text !== '');
  if (way.length > 0) return `moved ${what} ${way.join(' and ')}, ${onto}`;
  return from[4] === to[4] ? `set how far ${what} stands off` : `turned ${what}`;
};

const tellObjects: Teller = (own, { judgements }, more) => {
  const came = own.filter(({ key, from, to }) => fieldOf(key) === null && from === undefined && to !== undefined);
  if (came.length > 0) return `brought in ${count(came.length + more, 'record')}`;
  const [first] = own;
  if (first === undefined) return null;
  const id = idOf(first.key);
  const name = calledOf(judgements, 'objects', id, 'a record');
  const field = fieldOf(first.key);
  if (field === null) return `brought in ${count(own.length + more, 'record')} again`;
  if (field === 'removed') return `took ${name} off the checklist`;
  const others = new Set(own.map(({ key }) => idOf(key))).size;
  return others > 1 ? `corrected ${count(others, 'record')}` : `corrected ${name}: ${FIELD_WORDS[field] ?? field}`;
};

const FIELD_WORDS: Readonly<Record<string, string>> = {
  measured: 'its size',
  weightKg: 'its weight',
  hardware: 'its hardware',
  dateText: 'its date',
  maker: 'its maker',
  medium: 'its medium',
  title: 'its title',
  number: 'its number',
  levelsMm: 'its levels',
  frame: 'its frame',
};

const tellRooms: Teller = (own, { judgements }) => {
  const [first] = own;
  if (first === undefined) return null;
  const name = judgements.documents.get('rooms', idOf(first.key))?.name ?? 'a room';
  return fieldOf(first.key) === null ? `measured ${name}` : `corrected ${name}`;
};

const tellSamples: Teller = (own, { judgements }) => {
  const [first] = own;
  if (first === undefined) return null;
  const stored = judgements.documents.stored('samples', idOf(first.key)) ?? first.to;
  const { paintId, kind, sentOn } = (stored ?? {}) as Partial<Sample>;
  const what = `a ${kind ?? 'sample'} of ${judgements.documents.get('deck', paintId ?? '')?.name ?? 'a paint that is gone'}`;
  const field = fieldOf(first.key);
  if (field === null) return first.to === undefined ? `took back ${what}` : `${sentOn ? 'sent' : 'asked for'} ${what}`;
  if (field === 'removed') return first.to === true ? `dropped ${what}` : `brought back ${what}`;
  return first.to ? `sent ${what}` : `said that ${what} is not sent yet`;
};

const tellSampleWords: Teller = (own, { judgements }) => {
  const [first] = own;
  const word = (first?.to ?? first?.from) as Partial<SampleWord> | undefined;
  if (first === undefined || word === undefined) return null;
  const sample = judgements.documents.stored('samples', word.sampleId ?? '') as Partial<Sample> | undefined;
  const paint = judgements.documents.get('deck', sample?.paintId ?? '')?.name ?? 'a paint that is gone';
  const of = `a ${sample?.kind ?? 'sample'} of ${paint}`;
  if (first.to === undefined) return word.said === 'approved' ? `took back approving ${of}` : `had not seen ${of}`;
  return word.said === 'approved' ? `approved ${of}` : `saw ${of} under ${word.under || 'a light not named'}`;
};

const tellCollectionWords: Teller = ([first]) => {
  const word = (first?.to ?? first?.from) as Partial<CollectionWord> | undefined;
  if (first === undefined || word === undefined) return null;
  const what = `${word.number ?? 'a thing'} of the collection`;
  return first.to === undefined ? `took back ${word.said ?? 'a word'} on ${what}` : `said ${word.said} to ${what}`;
};

const tellCuts: Teller = ([first]) =>
  first?.to === 'leave out'
    ? 'left the ground out of a picture'
    : first?.to === 'keep'
      ? 'kept the ground of a picture'
      : first?.to === 'whole'
        ? 'took a picture whole'
        : 'took back a word on the ground of a picture';

const tellLoans: Teller = (own, { judgements }) => {
  const [first] = own;
  if (first === undefined) return null;
  const ids = new Set(own.map(({ key }) => idOf(key)));
  if (ids.size > 1) return `corrected ${count(ids.size, 'loan')}`;
  const name = calledOf(judgements, 'objects', idOf(first.key), 'a record');
  const field = fieldOf(first.key);
  if (field === 'status') return `said that the loan of ${name} is ${String(first.to ?? 'a wish')}`;
  return field === 'agreedPlaces' ? `wrote down that the lender of ${name} agrees` : `corrected the loan of ${name}`;
};

const tellLights: Teller = (own, { judgements }) => {
  const [first] = own;
  if (first === undefined) return null;
  if (own.length > 1) return 'planned the light';
  const { lux, read } = (first.to ?? {}) as { lux?: unknown; read?: { lux?: unknown } };
  const was = ((first.from ?? {}) as { read?: { lux?: unknown } }).read?.lux;
  const on = first.key.includes('#') ? judgements.nameOf(first.key) : surfaceName(judgements.documents, first.key);
  if (typeof read?.lux === 'number' && read.lux !== was) return `wrote down ${read.lux} lux read on ${on}`;
  return typeof lux === 'number' ? `planned ${lux} lux on ${on}` : `planned no light of its own on ${on}`;
};

const tellPins: Teller = (own, { judgements }, more) => {
  const what = piecesText(
    own.map(({ key }) => key),
    judgements,
    more,
  );
  return own[0]?.to === true ? `pinned ${what}` : `unpinned ${what}`;
};

const tellLabels: Teller = (own, { judgements }, more) => {
  const what = piecesText(
    own.map(({ key }) => key),
    judgements,
    more,
  );
  const side = own[0]?.to;
  if (side === 'none') return `left the label of ${what} out`;
  return side === undefined ? `let the label of ${what} find room` : `put the label of ${what} ${String(side)}`;
};

const tellDeclined: Teller = ([first]) => {
  const way = ((first?.to ?? first?.from) as Partial<DeclinedWord> | undefined)?.way ?? 'a way to arrange';
  return first?.to === undefined ? 'had declined ways to arrange offered again' : `declined a way to arrange: ${way}`;
};

const TELLERS: readonly (readonly [RootName, Teller])[] = [
  ['proposals', tellProposals],
  ['proposed', tellProposed],
  ['remarks', tellRemarks],
  ['vignettes', tellVignettes],
  ['places', tellPlaces],
  ['memberOf', tellMembers],
  ['paints', tellPaints],
  ['objects', tellObjects],
  ['pieces', () => 'corrected a piece'],
  ['deck', (own) => `${fieldOf(own[0]?.key ?? '') === null ? 'added' : 'corrected'} ${count(own.length, 'paint')}`],
  ['pictureCuts', tellCuts],
  ['samples', tellSamples],
  ['sampleWords', tellSampleWords],
  [
    'declinedSuggestions',
    ([first]) => (first?.to === undefined ? 'offered again what was declined' : 'declined a suggestion'),
  ],
  ['collectionWords', tellCollectionWords],
  ['pinned', tellPins],
  ['labelSides', tellLabels],
  ['declined', tellDeclined],
  ['rooms', tellRooms],
  ['openings', () => 'corrected an opening'],
  ['fixtures', () => 'corrected a fixture to keep clear'],
  ['loans', tellLoans],
  ['lights', tellLights],
  [
    'finishes',
    ([first], { judgements }) =>
      first === undefined ? null : `wrote down what is done to ${surfaceName(judgements.documents, idOf(first.key))}`,
  ],
  ['limits', () => 'changed a limit of practice'],
  ['settings', () => 'changed a setting of the show'],
];

/** 'The mangle', '41 of Printing blocks', '12 pieces'. */
function piecesText(pieceIds: readonly PieceId[], judgements: Judgements, more = 0): string {
  const [first] = pieceIds;
  if (first === undefined) return 'nothing';
  if (pieceIds.length === 1 && more === 0) return judgements.nameOf(first);
  const objects = new Set(pieceIds.map(objectOfPiece));
  const total = pieceIds.length + more;
  const title = judgements.documents.get('objects', objectOfPiece(first))?.title;
  return objects.size === 1 && title ? `${total} of ${title}` : count(total, 'piece');
}

/** The pieces a deed is about. */
export function piecesOfDeed(changes: readonly DeedChange[]): PieceId[] {
  const roots: readonly RootName[] = ['places', 'memberOf'];
  return [...new Set(changes.filter(({ root }) => roots.includes(root)).map(({ key }) => key))];
}
