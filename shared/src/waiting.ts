/** What holds the show up, on whom, by when. Derived: a line goes by itself when what it waits for is there. */
import { focalOf, membersOf } from './commands.ts';
import type { Judgements } from './judgements.ts';
import { movesOf } from './proposal-moves.ts';
import { threadsOf } from './remarks.ts';
import { APPROVERS, samplesByPaint, surfacesByPaint } from './samples.ts';
import { type ObjectId, objectOfPiece, type PieceId, type SurfaceId, surfaceParts } from './schema.ts';
import { mayWrite, ROLES, type Role } from './seats.ts';
import { surfaceName } from './surface-names.ts';
import type { RemarkAbout } from './talk.ts';
import { surfacesOf } from './vignette-list.ts';
import type { WaitingKind, WaitingLine } from './waiting-line.ts';
import { cautionLines, loanLines } from './waiting-loans.ts';

export type { WaitingKind, WaitingLine, WaitingTarget } from './waiting-line.ts';

/** Lines by day (those without one last), then in the order of kinds, then by title, then by id: alike on every page. */
export function waitingOf(judgements: Judgements): WaitingLine[] {
  const lines = [
    ...ringLines(judgements),
    ...loanLines(judgements),
    ...signOffLines(judgements),
    ...questionLines(judgements),
    ...proposalLines(judgements),
    ...sampleLines(judgements),
    ...recordLines(judgements),
    ...cautionLines(judgements),
  ];
  const day = ({ byDay }: WaitingLine): string => byDay ?? '9999';
  return lines.sort(
    (a, b) =>
      compare(day(a), day(b)) ||
      KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) ||
      compare(a.title, b.title) ||
      compare(a.id, b.id),
  );
}

const KINDS: readonly WaitingKind[] = [
  'clash',
  'loan',
  'sign-off',
  'question',
  'proposal',
  'sample',
  'size',
  'picture',
  'caution',
];

function compare(a: string, b: string): number {
  return a === b ? 0 : a < b ? -1 : 1;
}

/** Whether a line waits for this person, by name or by role. */
export function waitsFor(line: WaitingLine, person: { readonly id: string; readonly role: Role }): boolean {
  return line.persons.length > 0 ? line.persons.some(({ id }) => id === person.id) : line.roles.includes(person.role);
}

function dayOf(judgements: Judgements, key: 'agreeBy' | 'hangBegins'): string | null {
  return judgements.setting(key) || null;
}

const HANGERS: readonly Role[] = ROLES.filter((role) => mayWrite(role, 'hang') && role !== 'guest artist');
const RECORDERS: readonly Role[] = ['registrar'];

function signOffLines(judgements: Judgements): WaitingLine[] {
  const { documents } = judgements;
  const peopled = new Set(documents.all('memberOf').values());
  return [...documents.all('vignettes')].flatMap(([vignetteId, { name }]): WaitingLine[] => {
    const standing = peopled.has(vignetteId) ? judgements.standingOf(vignetteId) : null;
    if (standing === null || standing.waitingFor.length === 0) return [];
    const had = standing.signatures.filter(({ changes }) => changes.length === 0).map((signature) => signature.name);
    const changed = standing.changes.length;
    const words = [
      had.length > 0 ? `${listed(had)} ${had.length === 1 ? 'has' : 'have'}` : '',
      changed > 0 ? `changed since in ${changed} ${changed === 1 ? 'thing' : 'things'}` : '',
      had.length === 0 && changed === 0 ? 'nobody has yet' : '',
    ];
    return [
      {
        id: `sign-off ${vignetteId}`,
        kind: 'sign-off',
        title: `Sign off ${name}`,
        detail: words.filter((word) => word !== '').join('; '),
        roles: standing.waitingFor,
        persons: [],
        byDay: dayOf(judgements, 'agreeBy'),
        goes: {
          kind: 'vignette',
          vignetteId,
          surface: surfacesOf(judgements, focalOf(documents, vignetteId), membersOf(documents, vignetteId))[0] ?? null,
        },
      },
    ];
  });
}

function questionLines(judgements: Judgements): WaitingLine[] {
  return threadsOf(judgements.documents).flatMap(({ id, remark, waitsForAnswer }): WaitingLine[] => {
    if (!waitsForAnswer || !remark.asked) return [];
    return [
      {
        id: `question ${id}`,
        kind: 'question',
        title: `Answer ${remark.name} on ${nameOfAbout(judgements, remark.about)}`,
        detail: shortened(remark.text),
        roles: [],
        persons: [{ id: remark.asked.personId, name: remark.asked.name }],
        byDay: remark.asked.byDay ?? dayOf(judgements, 'agreeBy'),
        goes: { kind: 'remark', remarkId: id, about: remark.about },
      },
    ];
  });
}

/** What a remark is about, by its name. */
function nameOfAbout(judgements: Judgements, about: RemarkAbout): string {
  const { documents } = judgements;
  switch (about.kind) {
    case 'piece':
      return judgements.nameOf(about.pieceId);
    case 'vignette':
      return documents.get('vignettes', about.vignetteId)?.name ?? 'a vignette that is gone';
    case 'wall':
    case 'spot':
      return surfaceName(documents, about.surface);
    case 'paint':
      return documents.get('deck', about.paintId)?.name ?? 'a paint that is gone';
    case 'proposal':
      return documents.get('proposals', about.proposalId)?.title ?? 'a proposal that is gone';
  }
}

function proposalLines(judgements: Judgements): WaitingLine[] {
  const { documents } = judgements;
  return [...documents.all('proposals')].flatMap(([proposalId, proposal]): WaitingLine[] => {
    if (proposal.outcome) return [];
    const moves = movesOf(documents, proposalId).filter(({ standing }) => standing === 'open' || standing === 'clash');
    if (moves.length === 0) return [];
    const clashes = moves.filter(({ standing }) => standing === 'clash').length;
    const line = {
      roles: HANGERS,
      persons: [],
      byDay: dayOf(judgements, 'agreeBy'),
      goes: { kind: 'proposal', proposalId },
    } as const;
    const answer: WaitingLine = {
      ...line,
      id: `proposal ${proposalId}`,
      kind: 'proposal',
      title: `Answer the proposal ${proposal.title}`,
      detail: `${proposal.name}; ${moves.length} ${moves.length === 1 ? 'move' : 'moves'} to take or leave`,
    };
    if (clashes === 0) return [answer];
    const settle: WaitingLine = {
      ...line,
      id: `clash ${proposalId}`,
      kind: 'clash',
      title: `Settle ${clashes === 1 ? 'a clash' : `${clashes} clashes`} in ${proposal.title}`,
      detail: 'the hang has moved since it was proposed',
    };
    return [settle, answer];
  });
}

/** Carriers that came to stand on each other from two sides: whichever fell out is shown as unplaced until settled. */
function ringLines(judgements: Judgements): WaitingLine[] {
  const fallen = [...judgements.documents.all('places').keys()].filter((pieceId) =>
    judgements.where.fellFromRing(pieceId),
  );
  return fallen.map((pieceId) => ({
    id: `ring ${pieceId}`,
    kind: 'clash',
    title: `Find a place for ${judgements.nameOf(pieceId)}`,
    detail: 'two people set it on what it carries, each before seeing the other; it is with the unplaced until settled',
    roles: HANGERS,
    persons: [],
    byDay: dayOf(judgements, 'agreeBy'),
    goes: { kind: 'pieces', pieceIds: [pieceId] },
  }));
}

/**
 * A line for each paint on a wall of which no sample is approved: on whoever the furthest sample was sent to, until then
 * on those who choose the paints.
 */
function sampleLines(judgements: Judgements): WaitingLine[] {
  const { documents } = judgements;
  const samples = samplesByPaint(documents);
  return [...surfacesByPaint(documents)].flatMap(([paintId, surfaces]): WaitingLine[] => {
    const [furthest] = samples.get(paintId) ?? [];
    if (furthest?.state === 'approved') return [];
    const { kind, to, sentOn } = furthest?.sample ?? { kind: 'drawdown', to: { personId: '', name: '' }, sentOn: '' };
    const sent = furthest !== undefined && furthest.state !== 'to post';
    const seen = (furthest?.seen ?? []).map(({ name, under }) => (under ? `${name} under ${under}` : name));
    const words =
      furthest === undefined
        ? 'no drawdown or sample board has been asked for'
        : !sent
          ? `a ${kind} is to be posted to ${to.name}`
          : seen.length > 0
            ? `a ${kind}, seen by ${listed(seen)}; not approved yet`
            : `a ${kind} went to ${to.name}${sentOn ? '' : ' without a day'}; not seen yet`;
    return [
      {
        id: `sample ${paintId}`,
        kind: 'sample',
        title: `Approve a sample of ${documents.get('deck', paintId)?.name ?? ''}`,
        detail: `${wallsText(judgements, surfaces)}; ${words}`,
        roles: APPROVERS.filter((role) => role !== 'guest artist'),
        persons: sent && to.personId !== '' ? [{ id: to.personId, name: to.name }] : [],
        byDay: dayOf(judgements, 'agreeBy'),
        goes: { kind: 'paint', paintId },
      },
    ];
  });
}

/** '4 walls of the Wheel Room', 'Counting Room, west wall'. */
function wallsText(judgements: Judgements, surfaces: readonly SurfaceId[]): string {
  const [first] = surfaces;
  if (first === undefined) return '';
  if (surfaces.length === 1) return surfaceName(judgements.documents, first);
  const rooms = new Set(surfaces.map((surface) => surfaceParts(surface)?.roomId ?? ''));
  const names = [...rooms].map((roomId) => judgements.documents.get('rooms', roomId)?.name ?? '');
  return `${surfaces.length} walls of ${listed(names)}`;
}

function recordLines(judgements: Judgements): WaitingLine[] {
  const unsized = new Map<ObjectId, PieceId>();
  const estimated = new Map<ObjectId, PieceId>();
  const unpictured = new Map<ObjectId, PieceId>();
  // By number, not in the order the records came in: that is another on every page.
  const inOrder = [...judgements.documents.all('objects')].sort(
    ([idA, a], [idB, b]) => compare(a.number, b.number) || compare(idA, idB),
  );
  for (const [objectId] of inOrder) {
    for (const pieceId of judgements.piecesOf(objectId)) {
      const size = judgements.sizeOf(pieceId);
      if (size === null || !size.known) unsized.set(objectId, unsized.get(objectId) ?? pieceId);
      else if (!size.certain) estimated.set(objectId, estimated.get(objectId) ?? pieceId);
      if (judgements.pictureIdOf(pieceId) === null) unpictured.set(objectId, unpictured.get(objectId) ?? pieceId);
    }
  }
  const line = (
    kind: 'size' | 'picture',
    id: string,
    what: string,
    found: ReadonlyMap<ObjectId, PieceId>,
    byDay: string | null,
  ): WaitingLine[] => {
    if (found.size === 0) return [];
    const pieceIds = [...found.values()];
    const names = pieceIds.map((pieceId) => {
      const object = judgements.documents.get('objects', objectOfPiece(pieceId));
      return object?.title || object?.number || '';
    });
    return [
      {
        id,
        kind,
        title: `${what} of ${found.size} ${found.size === 1 ? 'record' : 'records'}`,
        detail: names.length > 4 ? `${names.slice(0, 3).join(', ')} and ${names.length - 3} more` : listed(names),
        roles: RECORDERS,
        persons: [],
        byDay,
        goes: { kind: 'pieces', pieceIds },
      },
    ];
  };
  const hang = dayOf(judgements, 'hangBegins');
  return [
    ...line('size', 'sizes', 'Sizes', unsized, hang),
    ...line('size', 'estimates', 'Sizes, only estimated,', estimated, hang),
    ...line('picture', 'pictures', 'Pictures', unpictured, dayOf(judgements, 'agreeBy')),
  ];
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

function shortened(text: string): string {
  return text.length <= 120 ? text : `${text.slice(0, 117).trimEnd()}…`;
}
