/** What must hold of any show, whatever came in whatever order: as stored, and as it is shown. */
import { focalOf, membersOf, vignetteOf } from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { ARRANGED_ROOTS } from '@enfilade/shared/hang-layer';
import type { Judgements } from '@enfilade/shared/judgements';
import { hangStateOf } from '@enfilade/shared/kept-states';
import { movesOf } from '@enfilade/shared/proposal-moves';
import { layerOfProposal } from '@enfilade/shared/proposals';
import { threadsOf } from '@enfilade/shared/remarks';
import { samplesByPaint, samplesToPost } from '@enfilade/shared/samples';
import { carrierOf, openingOf, type PieceId, ROOTS, type RootName, surfaceParts } from '@enfilade/shared/schema';
import { DOCUMENT_NAMES } from '@enfilade/shared/seats';
import { canonicalVignetteOf, toCanonicalText } from '@enfilade/shared/sign-off';
import { vignetteListOf } from '@enfilade/shared/vignette-list';
import { waitingOf } from '@enfilade/shared/waiting';
import { Whereabouts } from '@enfilade/shared/whereabouts';
import { WALL_SIDES } from '@enfilade/space/room';
import type * as Y from 'yjs';

/** Every entity of every root, as screens read them. */
export function shownIn(documents: ShowDocuments): Record<string, string> {
  const roots = Object.keys(ROOTS) as RootName[];
  return Object.fromEntries(roots.map((root) => [root, toCanonicalText(Object.fromEntries(documents.all(root)))]));
}

/** Every stored fact of every document. */
export function storedIn(documents: ShowDocuments): Record<string, unknown> {
  return Object.fromEntries(
    DOCUMENT_NAMES.map((name) => {
      const doc = documents.doc(name) as Y.Doc;
      return [name, Object.fromEntries([...doc.share.keys()].sort().map((root) => [root, doc.getMap(root).toJSON()]))];
    }),
  );
}

/** What the sheets are made of, in the order they tell it: it must not follow from what came first. */
export function toldIn(judgements: Judgements): Record<string, string> {
  const { documents } = judgements;
  const moves = [...documents.all('proposals').keys()].sort().map((id) => movesOf(documents, id));
  return {
    list: toCanonicalText(vignetteListOf(judgements)),
    waiting: toCanonicalText(waitingOf(judgements)),
    threads: toCanonicalText(threadsOf(documents)),
    moves: toCanonicalText(moves),
    samples: toCanonicalText([
      samplesToPost(documents),
      [...samplesByPaint(documents)].sort(([a], [b]) => (a < b ? -1 : 1)),
    ]),
  };
}

/** What does not hold, in words; nothing when all is well. */
export function brokenIn(judgements: Judgements): string[] {
  const { documents } = judgements;
  return [...ofPlaces(judgements), ...ofVignettes(judgements), ...ofSnapshots(documents), ...ofReading(judgements)];
}

/** One piece one place as shown; what it stands on is there; nothing carries itself. */
function ofPlaces({ documents, where }: Judgements): string[] {
  const broken: string[] = [];
  const anew = new Whereabouts(documents);
  const placed = new Set<PieceId>();
  for (const [pieceId, stored] of documents.all('places')) {
    const at = where.placeOf(pieceId);
    if (toCanonicalText([at]) !== toCanonicalText([anew.placeOf(pieceId)])) broken.push(`${pieceId}: place kept anew`);
    if (!anew.directlyOn(carrierOf(stored[0])?.pieceId ?? stored[0]).has(pieceId)) broken.push(`${pieceId}: not found`);
    if (at === null) continue;
    placed.add(pieceId);
    const carrier = carrierOf(at[0]);
    if (carrier !== null && where.placeOf(carrier.pieceId) === null) broken.push(`${pieceId} stands on an unplaced`);
    const surface = where.surfaceOf(pieceId);
    if (surface === null) broken.push(`${pieceId} is placed and on no surface`);
    const room = surface === null ? null : surfaceParts(surface);
    if (room !== null && documents.get('rooms', room.roomId) === undefined) broken.push(`${pieceId} is in no room`);
    const opening = openingOf(at[0]);
    if (opening !== null && documents.get('openings', opening) === undefined) broken.push(`${pieceId}: no opening`);
    const chain = new Set<PieceId>();
    for (let next: PieceId | undefined = pieceId; next !== undefined; ) {
      if (chain.has(next)) {
        broken.push(`${pieceId} stands in a ring`);
        break;
      }
      chain.add(next);
      next = carrierOf(where.placeOf(next)?.[0] ?? '')?.pieceId;
    }
    if (where.loadOf(pieceId).includes(pieceId)) broken.push(`${pieceId} carries itself`);
  }
  // On the surfaces themselves: each placed piece hangs, stands or lies directly on one at most, and none that is unplaced.
  const surfaces = [...documents.all('rooms').keys()].flatMap((id) =>
    [...WALL_SIDES, 'floor'].map((s) => `${id}:${s}`),
  );
  const seen = new Map<PieceId, string>();
  for (const surface of [...surfaces, 'layout']) {
    const here =
      surface.endsWith(':floor') || surface === 'layout' ? where.planOf(surface) : where.elevationOf(surface);
    for (const { pieceId, direct } of here) {
      if (!placed.has(pieceId)) broken.push(`${pieceId} is seen on ${surface} and is unplaced`);
      if (!direct) continue;
      if (seen.has(pieceId)) broken.push(`${pieceId} is on ${seen.get(pieceId)} and on ${surface}`);
      seen.set(pieceId, surface);
    }
  }
  return broken;
}

/** Members' vignettes exist as shown, a piece is in one, the focal work is a member or none, orders are total. */
function ofVignettes(judgements: Judgements): string[] {
  const { documents } = judgements;
  const broken: string[] = [];
  const inOne = new Map<PieceId, string>();
  for (const [id, vignette] of documents.all('vignettes')) {
    for (const field of ['name', 'intent', 'order'] as const) {
      if (typeof vignette[field] !== 'string') broken.push(`vignette ${id} has no ${field}`);
    }
    const members = membersOf(documents, id);
    for (const pieceId of members) {
      if (inOne.has(pieceId)) broken.push(`${pieceId} is in two vignettes`);
      inOne.set(pieceId, id);
    }
    const focal = focalOf(documents, id);
    const signed = canonicalVignetteOf(documents, id);
    if (focal !== null && !members.includes(focal)) broken.push(`the focal work of ${id} is no member`);
    if (signed?.focal !== focal) broken.push(`the focal work of ${id} is signed as another`);
    if (Object.keys(signed?.places ?? {}).join() !== members.join()) broken.push(`${id} is signed with other members`);
  }
  for (const pieceId of documents.all('memberOf').keys()) {
    const id = vignetteOf(documents, pieceId);
    if (id !== null && documents.get('vignettes', id) === undefined) broken.push(`${pieceId}: its vignette is gone`);
    if (id !== null && documents.get('objects', pieceId.split('#')[0] as string) && inOne.get(pieceId) !== id)
      broken.push(`${pieceId} is in ${id} and no member of it`);
  }
  const rows = vignetteListOf(judgements);
  if (rows.length !== documents.all('vignettes').size) broken.push('the list leaves vignettes out');
  for (const [index, row] of rows.entries()) {
    const before = rows[index - 1];
    const order = (id: string): string => documents.get('vignettes', id)?.order ?? '';
    const key = (id: string): string => `${order(id)} ${id}`;
    if (before !== undefined && !(key(before.id) < key(row.id)))
      broken.push(`${before.id} and ${row.id} have no order`);
    if (row.focal !== null && row.focal.pieceId !== focalOf(documents, row.id))
      broken.push(`${row.id}: focal as listed`);
  }
  return broken;
}

/** A snapshot kept change by change is the one built anew; so is every proposal laid over. */
function ofSnapshots(documents: ShowDocuments): string[] {
  if (documents.layer !== null) return [];
  const docs = new Map(DOCUMENT_NAMES.map((name) => [name, documents.doc(name) as Y.Doc]));
  const anew = shownIn(new ShowDocuments(docs));
  return Object.entries(shownIn(documents)).flatMap(([root, shown]) =>
    shown === anew[root] ? [] : [`${root} kept anew`],
  );
}

/** Records and proposals whose base is gone are gone, not ghosts of their edits; nothing that lists them throws. */
function ofReading(judgements: Judgements): string[] {
  const { documents } = judgements;
  const broken: string[] = [];
  const whole = { rooms: 'name', openings: 'sides', fixtures: 'surface', objects: 'number', deck: 'lab' } as const;
  for (const [root, field] of Object.entries(whole) as [keyof typeof whole, string][]) {
    for (const [id, entity] of documents.all(root)) {
      if ((entity as unknown as Record<string, unknown>)[field] === undefined) broken.push(`${root} ${id} is a ghost`);
    }
  }
  for (const [id, { title }] of documents.all('proposals'))
    if (title === undefined) broken.push(`proposal ${id} is a ghost`);
  for (const [id, { text }] of documents.all('remarks')) if (text === undefined) broken.push(`remark ${id} is a ghost`);
  waitingOf(judgements);
  return broken;
}

/** Each open layer, followed change by change, shows what the same layer built anew shows; told by proposal. */
export function layersOf(
  live: ShowDocuments,
  followed: ReadonlyMap<string, ShowDocuments>,
): { readonly broken: string[]; readonly shown: Record<string, string> } {
  const broken: string[] = [];
  const shown: Record<string, string> = {};
  for (const [id, laid] of followed) {
    const anew = live.laidOver(layerOfProposal(live, id));
    const text = toCanonicalText(hangStateOf(anew));
    if (toCanonicalText(hangStateOf(laid)) !== text) broken.push(`proposal ${id}: laid facts kept anew`);
    for (const root of ARRANGED_ROOTS) {
      const entities = toCanonicalText(Object.fromEntries(anew.all(root)));
      if (toCanonicalText(Object.fromEntries(laid.all(root))) !== entities)
        broken.push(`proposal ${id}: ${root} kept anew`);
    }
    anew.close();
    shown[id] = text;
  }
  return { broken, shown };
}
