/** A hostile client: every role tries every document and every act, and sees nothing of what is private. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { CautionKind } from '@enfilade/practice/caution';
import { ACTS as ACTS_OF_SERVER } from '@enfilade/server/acts';
import { standingCautionsOf } from '@enfilade/shared/accepted';
import { Judgements } from '@enfilade/shared/judgements';
import { DOCUMENT_NAMES, type DocumentName, type Role } from '@enfilade/shared/seats';
import { canonicalVignetteOf, digestOf, toCanonicalText } from '@enfilade/shared/sign-off';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { WebSocket } from 'ws';
import type * as Y from 'yjs';
import { COLUMNS, POWERS_TABLE, toMarkdown } from './powers-table.ts';
import { type Scene, scene, type TakenSeat } from './scene.ts';

const CANARY = /CANARY/;
/** A root of each document that nothing else in these tests writes. */
const MARK_ROOT = 'marks';

async function furnished(): Promise<Scene> {
  const here = await scene();
  const fill = (name: DocumentName, change: (doc: Y.Doc) => void): Promise<void> =>
    here.server.sessions.get(name).act(change);
  await fill('rooms', (doc) =>
    doc.getMap('rooms').set('wheel', {
      name: 'Wheel Room',
      order: 1,
      widthMm: 8400,
      depthMm: 6200,
      heightMm: 3600,
      headFaces: 'north',
      cornersMm: [0, 0, 0, 0],
      laserMm: 1000,
    }),
  );
  await fill('checklist', (doc) => {
    doc.getMap('objects').set('gear', {
      number: 'L.9',
      title: 'Sluice gear, painted',
      dimensionsText: '148 × 78 × 62 cm',
      count: 1,
      lender: 'The Lower Weir Conservancy',
      source: 'loan',
    });
  });
  await fill('hang', (doc) => {
    doc.getMap('vignettes').set('sixty', { name: 'Sixty impressions', intent: '', focal: 'gear#1', order: 'a0' });
    doc.getMap('memberOf').set('gear#1', 'sixty');
    doc.getMap('places').set('gear#1', ['wheel:head', 1000, 1500, 0, 0]);
  });
  await fill('private', (doc) =>
    doc.getMap('values').set('gear', { value: 'CANARY-VALUE', contact: 'CANARY-CONTACT', storage: 'CANARY-STORAGE' }),
  );
  const known = { maker: '', date: '', medium: '', type: 'eel trap', dimensions: '', credit: '', shown: null };
  await here.server.collection.fill([
    { number: 'OM 1903.2', title: 'Eel trap', ...known, picture: null, storage: 'Store of traps' },
  ]);
  await here.server.store.query
    .insertInto('collection_held')
    .values({ key: 'om.1903.2', facts: '{"value":"VALUE-OF-TRAP"}' })
    .execute();
  return here;
}

/** Whether the server lets the socket be opened at all; the answer to one that it does not is 403. */
function opens(here: Scene, seat: TakenSeat, name: DocumentName): Promise<boolean> {
  const socket = new WebSocket(here.socketUrl(seat, name), { headers: { cookie: seat.cookie } });
  socket.on('error', () => {});
  return new Promise((done) => {
    socket.once('open', () => {
      socket.terminate();
      done(true);
    });
    socket.once('unexpected-response', (request, response) => {
      expect(response.statusCode).toBe(403);
      request.destroy();
      done(false);
    });
  });
}

/** Opens a document as a client of ours would, asks for all of it, and writes into it whatever the answer. */
async function tryDocument(here: Scene, seat: TakenSeat, name: DocumentName, mark: string): Promise<string> {
  if (!(await opens(here, seat, name))) return 'nothing';
  const client = await here.client(seat, name);
  client.sendStepOne();
  await client.when(({ updatesReceived }) => updatesReceived > 0);
  client.edit((doc) => doc.getMap(MARK_ROOT).set(mark, seat.personId));
  await client.when(({ acknowledged, notices }) => acknowledged > 0 || notices.some(({ kind }) => kind === 'refused'));
  const stored = here.server.sessions.get(name).doc.getMap(MARK_ROOT).has(mark);
  client.socket.terminate();
  return stored ? 'reads+writes' : 'reads';
}

const tried = new Set<string>();

async function act(here: Scene, seat: TakenSeat, name: string, body: unknown): Promise<string> {
  tried.add(name);
  const answer = await here.get(seat, `acts/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: here.address },
    body: JSON.stringify(body),
  });
  expect(await answer.text()).not.toMatch(CANARY);
  return wordFor(answer.status);
}

function wordFor(status: number): string {
  if (status === 200) return 'may';
  expect(status).toBe(403);
  return 'refused';
}

const ACTS: Readonly<Record<string, (here: Scene, seat: TakenSeat) => Promise<string>>> = {
  'sign off': async (here, seat) => {
    const form = canonicalVignetteOf(here.server.sessions.documents, 'sixty');
    const digest = form === null ? '' : digestOf(toCanonicalText(form));
    return act(here, seat, 'sign-off', { vignetteId: 'sixty', digest });
  },
  'bring pictures in': async (here, seat) => {
    const png = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#888' } })
      .png()
      .toBuffer();
    const answer = await here.get(seat, 'images?name=a.png', { method: 'POST', body: new Uint8Array(png) });
    return wordFor(answer.status);
  },
  'have a manifest and its pictures fetched': async (here, seat) => {
    const post = (path: string, body: unknown) =>
      here.get(seat, path, { method: 'POST', body: JSON.stringify(body), headers: { origin: here.address } });
    const statuses = [
      (await post('manifests', { type: 'Manifest', items: [{ type: 'Canvas' }], label: 'Gear' })).status,
      // Of this very machine: nobody has it called, and most may not even ask.
      (await post('manifests/fetch', { address: `${here.address}/health` })).status,
      (await post('manifests/none/pictures/0/0', {})).status,
    ];
    if (statuses.every((status) => status === 403)) return 'refused';
    expect(statuses).toEqual([200, 422, 404]);
    return 'may';
  },
  'take the whole show out': async (here, seat) => {
    const answer = await here.get(seat, 'bundle');
    await answer.arrayBuffer();
    return wordFor(answer.status);
  },
  'take a whole show in': async (here, seat) => {
    const answer = await here.get(seat, 'bundle', { method: 'POST', body: 'x', headers: { origin: here.address } });
    // This show is not empty: not even a lead writes over it.
    return answer.status === 409 ? 'may' : wordFor(answer.status);
  },
  'take the checklist out as a manifest': async (here, seat) => {
    const answer = await here.get(seat, 'manifest.json');
    expect(await answer.text()).not.toMatch(CANARY);
    return wordFor(answer.status);
  },
  'see the pictures': async (here, seat) => wordFor((await here.get(seat, 'images/facts')).status),
  'print a wall': async (here, seat) => {
    const answer = await here.get(seat, 'paper/elevation.pdf?surface=wheel:head');
    expect(Buffer.from(await answer.arrayBuffer()).toString('latin1')).not.toMatch(CANARY);
    return wordFor(answer.status);
  },
  'read the history': async (here, seat) => {
    const answer = await here.get(seat, 'history');
    expect(await answer.text()).not.toMatch(CANARY);
    return wordFor(answer.status);
  },
  'read the collection': async (here, seat) => {
    const answer = await here.get(seat, 'collection?words=trap');
    expect(await answer.text()).toContain('Eel trap');
    return wordFor(answer.status);
  },
  'see storage places of the collection': async (here, seat) => {
    const told = await (await here.get(seat, 'collection?words=trap')).text();
    const answer = await here.get(seat, 'collection/pull-list');
    // A power over one path is one over the other.
    expect(told.includes('Store of traps')).toBe(answer.status === 200);
    return wordFor(answer.status);
  },
  'take records into the collection, and back': async (here, seat) => {
    const post = (path: string, body: unknown) =>
      here.get(seat, `collection/${path}`, { method: 'POST', body: JSON.stringify(body) });
    const begun = await post('imports', { file: 'store.csv', rows: 1 });
    const { id = 'none' } = (await begun.json()) as { id?: string };
    const statuses = [
      begun.status,
      (await post(`imports/${id}`, { rows: [{ number: 'HOSTILE.1', title: `of ${seat.personId}` }] })).status,
      (await here.get(seat, 'collection/imports')).status,
      (await post(`imports/${id}/back`, {})).status,
    ];
    // No such picture: whoever may is told so, the rest are not even asked.
    const photograph = (await post('photograph', { number: 'OM 1903.2', picture: 'f'.repeat(64) })).status;
    expect((await here.server.collection.facts()).count).toBe(1);
    if ([...statuses, photograph].every((status) => status === 403)) return 'refused';
    expect([...statuses, photograph]).toEqual([200, 200, 200, 200, 400]);
    return 'may';
  },
  'see values of the collection': async (here, seat) => {
    const told = await (await here.get(seat, 'collection/records?number=OM%201903.2')).text();
    return told.includes('VALUE-OF-TRAP') ? 'may' : 'refused';
  },
  'keep a state of the hang': (here, seat) => act(here, seat, 'keep-state', { name: 'As it stands' }),
  'freeze the vignette list': (here, seat) => act(here, seat, 'freeze-list', {}),
  'accept a caution on load or hanging': accept('weight not known', ''),
  'accept a caution on light or materials': accept('lead paint', ''),
  'accept a caution on light on a conservator’s word': accept('lead paint', 'a conservator by letter'),
  'accept a caution on a way': accept('stands out', ''),
  'accept a caution on a loan': accept('loan not agreed', ''),
  'take back another’s word on load or hanging': takeBack('weight not known'),
  'take back another’s word on light or materials': takeBack('lead paint'),
  'take back another’s word on a way': takeBack('stands out'),
  'take back one’s own word on a caution': (here, seat) => takeBack('weight not known', seat.personId)(here, seat),
  'print a loan list': async (here, seat) => {
    const answer = await here.get(seat, 'paper/loan-list.pdf?lender=The%20Lower%20Weir%20Conservancy');
    return wordFor(answer.status);
  },
  'see the seats': async (here, seat) => wordFor((await here.get(seat, 'seats')).status),
  'invite a viewer': (here, seat) => act(here, seat, 'invite', { name: 'Somebody', role: 'viewer', until: null }),
  'invite a curator': (here, seat) => act(here, seat, 'invite', { name: 'Somebody', role: 'curator' }),
  'invite a lead': (here, seat) => act(here, seat, 'invite', { name: 'Somebody', role: 'lead' }),
  'change a viewer’s role to registrar': about('viewer', 'change-role', { role: 'registrar' }),
  'change a viewer’s role to lead': about('viewer', 'change-role', { role: 'lead' }),
  'change a lead’s role': about('lead', 'change-role', { role: 'viewer' }),
  'take a viewer’s seat back': about('viewer', 'take-back', {}),
  'take a lead’s seat back': about('lead', 'take-back', {}),
  'give a viewer a new link': about('viewer', 'new-link', {}),
  'give a lead a new link': about('lead', 'new-link', {}),
  'change the own role, take the own seat back': async (here, seat) => {
    const outcomes = [
      await act(here, seat, 'change-role', { seatId: seat.seatId, role: 'viewer' }),
      await act(here, seat, 'take-back', { seatId: seat.seatId }),
    ];
    return outcomes.includes('may') ? 'may' : 'refused';
  },
};

/** Accepting whichever caution of a kind stands on the gear, as it stands, on somebody's word. */
function accept(kind: CautionKind, wordOf: string): (here: Scene, seat: TakenSeat) => Promise<string> {
  return async (here, seat) => {
    const judgements = new Judgements(here.server.sessions.documents, { get: () => undefined });
    const found = standingCautionsOf(judgements, 'gear#1').find(({ caution }) => caution.kind === kind);
    const digest = found?.digest ?? '';
    const cautions = [{ pieceId: 'gear#1', digest }];
    return act(here, seat, 'accept-cautions', { cautions, reason: 'Seen and weighed.', wordOf });
  };
}

/** Taking back a word on a caution that stands in the record, somebody else's unless it says whose. */
function takeBack(kind: CautionKind, giver = 'somebody'): (here: Scene, seat: TakenSeat) => Promise<string> {
  return async (here, seat) => {
    const said = { pieceId: 'gear#1', kind, digest: 'as seen', what: 'Seen.', reason: 'Weighed.', wordOf: '' };
    const value = { ...said, personId: giver, name: 'Somebody', role: 'lead', at: '2026-05-12T09:00:00.000Z' };
    await here.server.sessions.get('record').act((doc) => doc.getMap('acceptances').set('gear#1|as seen', value));
    const word = await act(here, seat, 'withdraw-acceptances', {
      cautions: [{ pieceId: 'gear#1', digest: 'as seen' }],
      reason: 'Weighed again.',
    });
    const kept = here.server.sessions.documents.get('acceptances', `gear#1|as seen|${value.at}`)?.withdrawn;
    // What was said is never lost, and the name is the seat's.
    if (word === 'may') expect(kept).toMatchObject({ personId: seat.personId, reason: 'Weighed again.' });
    return word;
  };
}

/** An act on a seat of a role, made for it. */
function about(role: Role, name: string, more: object): (here: Scene, seat: TakenSeat) => Promise<string> {
  return async (here, seat) => {
    const { seatId } = await here.seat(role, `target-${Math.random()}`);
    return act(here, seat, name, { seatId, ...more });
  };
}

test('law: every role × document × act comes out as the table says', async () => {
  const here = await furnished();
  const found: Record<string, string[]> = {};
  const note = (what: string, word: string): void => {
    found[what] = [...(found[what] ?? []), word];
  };
  const seats = new Map<Role, TakenSeat>();
  for (const role of COLUMNS) seats.set(role, await here.seat(role, `hostile ${role}`));
  for (const [role, seat] of seats) {
    for (const name of DOCUMENT_NAMES) note(name, await tryDocument(here, seat, name, `${role} in ${name}`));
    for (const [what, attempt] of Object.entries(ACTS)) note(what, await attempt(here, seat));
  }
  await here.server.sessions.get('hang').act((doc) => doc.getMap('settings').set('artistProposesOnly', true));
  for (const [role, seat] of seats) {
    note('hang, artist proposes only', await tryDocument(here, seat, 'hang', `${role} proposing`));
    note('freeze the vignette list, artist proposes only', await act(here, seat, 'freeze-list', {}));
  }
  expect(found).toEqual(POWERS_TABLE);
  // A new act has no power until it stands in the table.
  expect([...tried].sort()).toEqual(Object.keys(ACTS_OF_SERVER).sort());
}, 90_000);

test('law: what is in the private document is in no frame, answer, paper, export or log line of who may not read it', async () => {
  const here = await furnished();
  const outside = COLUMNS.filter((_, column) => POWERS_TABLE.private?.[column] === 'nothing');
  expect(outside).toEqual(['preparator', 'conservator', 'guest artist', 'viewer']);
  const inside = await here.client(await here.seat('registrar'), 'private');
  inside.sendStepOne();
  await inside.when(({ doc }) => doc.getMap('values').has('gear'));
  for (const role of outside) {
    const seat = await here.seat(role, `outside ${role}`);
    expect(await here.refusedUpgrade(here.socketUrl(seat, 'private'), { cookie: seat.cookie })).toBe(403);
    for (const name of DOCUMENT_NAMES) {
      if (name === 'private') continue;
      const client = await here.client(seat, name);
      // A state vector that claims to know nothing, and one that names the private document's own client.
      client.sendStepOne();
      await client.when(({ updatesReceived }) => updatesReceived > 0);
    }
    const paths = [
      'me',
      'seats',
      'history',
      'images/facts',
      'paper/elevation.pdf?surface=wheel:head',
      'paper/loan-list.pdf?lender=The%20Lower%20Weir%20Conservancy',
      'private',
      'doc/private',
      'collection',
      'collection/pull-list',
      'collection/records?number=OM%201903.2',
    ];
    const further = ['states', 'export', 'export.json', 'backup', 'paper/private', 'images/facts/private', 'values'];
    for (const path of [...paths, ...further]) {
      const answer = await here.get(seat, path);
      expect(Buffer.from(await answer.arrayBuffer()).toString('latin1'), path).not.toMatch(CANARY);
    }
  }
  for (const path of ['/', '/health', '/metrics', '/store.sqlite', '/data/store.sqlite', '/..%2fstore.sqlite']) {
    expect(await (await fetch(`${here.address}${path}`)).text()).not.toMatch(CANARY);
  }
  // A registrar writes once more while all of them listen.
  inside.edit((doc) => doc.getMap('values').set('gear/price', 'CANARY-PRICE'));
  await inside.when(({ acknowledged }) => acknowledged > 0);
  const seen = here.frames.filter(({ document }) => document !== 'private');
  expect(seen.length).toBeGreaterThan(outside.length * 5);
  for (const { bytes } of seen) expect(Buffer.from(bytes).toString('latin1')).not.toMatch(CANARY);
  for (const line of here.logged) expect(line).not.toMatch(CANARY);
  // The test can fail: whoever may read it was sent it.
  expect(here.frames.some(({ bytes }) => CANARY.test(Buffer.from(bytes).toString('latin1')))).toBe(true);
});

test('law: the threat model shows the table that is tried', async () => {
  const text = await readFile(join(import.meta.dirname, '..', '..', 'server', 'THREAT-MODEL.md'), 'utf8');
  // Columns are padded where it is read; what stands in them is the same.
  const bare = (table: string): string => table.replaceAll(/ +/g, ' ').replaceAll(/-{2,}/g, '---');
  expect(bare(text)).toContain(bare(toMarkdown()));
});
