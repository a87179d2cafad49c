/**
 * One document and 50, then 200 people in it, each with 5 moves and 10 words of presence a second, over real sockets,
 * server and clients in processes of their own; what refusing costs beside applying; many shows in one process.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { DEFAULT_LIMITS } from '@enfilade/server/limits';
import * as Y from 'yjs';
import { bundleForNode } from '../launch/bundle-for-node.mjs';
import type { Told } from './strain/clients.ts';
import { gapUpdates, refused } from './strain/gaps.ts';

export const name = 'the server under strain';

interface Row {
  readonly row: string;
  readonly ours: number;
  readonly peer: number;
  readonly ratio: number;
  readonly unit: string;
  readonly gate?: string;
}

interface Measured extends Told {
  readonly cpuMsPerMessage: number;
}

type Bundles = Readonly<Record<'our-server' | 'peer-server' | 'clients' | 'many-shows', string>>;

async function answerOf<T>(child: ChildProcess, ask?: unknown): Promise<T> {
  const heard = once(child, 'message');
  if (ask !== undefined) child.send(ask as string);
  const [told] = await heard;
  return told as T;
}

async function end(child: ChildProcess): Promise<void> {
  const gone = once(child, 'exit');
  child.send('end');
  await gone;
}

async function cpuMsOf(server: ChildProcess): Promise<number> {
  const { cpu } = await answerOf<{ cpu: NodeJS.CpuUsage }>(server, 'cpu');
  return (cpu.user + cpu.system) / 1000;
}

async function measure(serverFile: string, clientsFile: string, people: number, seconds: number): Promise<Measured> {
  const server = fork(serverFile);
  const where = await answerOf<{ url: string; cookie: string }>(server);
  const clients = fork(clientsFile, [JSON.stringify({ ...where, people, seconds })]);
  await once(clients, 'message');
  const before = await cpuMsOf(server);
  const told = await answerOf<Told>(clients, 'go');
  const cpu = (await cpuMsOf(server)) - before;
  await end(clients);
  await end(server);
  return { ...told, cpuMsPerMessage: cpu / told.sent };
}

function rowsOf(people: number, ours: Measured, peer: Measured, framesGate: number): Row[] {
  const head = `${people} people`;
  const full = people === 50;
  return [
    {
      row: `${head}: CPU of the server a message`,
      ours: ours.cpuMsPerMessage,
      peer: peer.cpuMsPerMessage,
      ratio: peer.cpuMsPerMessage / ours.cpuMsPerMessage,
      unit: 'ms',
      gate: '≥ 1.7',
    },
    {
      row: `${head}: frames to all, acknowledgements aside`,
      ours: ours.frames,
      peer: peer.frames,
      ratio: peer.frames / ours.frames,
      unit: 'frames',
      gate: `≥ ${framesGate}`,
    },
    {
      row: `${head}: a move until another has it, p95`,
      ours: ours.p95Ms,
      peer: peer.p95Ms,
      ratio: peer.p95Ms / ours.p95Ms,
      unit: 'ms',
      ...(full ? { gate: '≤ 60 ms' } : {}),
    },
    {
      row: `${head}: moves delivered`,
      ours: ours.delivered * 100,
      peer: peer.delivered * 100,
      ratio: ours.delivered / peer.delivered,
      unit: '%',
      ...(full ? { gate: '≥ 99 %' } : {}),
    },
  ];
}

/** CPU, ms, of this process. */
function cpuOf(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function gapRow(): Row {
  const updates = gapUpdates(4000);
  const peer = cpuOf(() => {
    const doc = new Y.Doc();
    for (const update of updates) Y.applyUpdate(doc, update);
  });
  const ours = cpuOf(() => {
    if (refused(updates, DEFAULT_LIMITS) !== updates.length) throw new Error('not every one was refused');
  });
  return {
    row: '4,000 updates without their predecessors: refusing; applying',
    ours,
    peer,
    ratio: peer / ours,
    unit: 'ms CPU',
    gate: '≥ 20',
  };
}

async function showsRow(file: string): Promise<Row> {
  const megabytesOf = async (shows: number): Promise<number> => {
    const child = fork(file, [String(shows)], { execArgv: ['--expose-gc'] });
    const { acknowledged, megabytes } = await answerOf<{ acknowledged: number; megabytes: number }>(child);
    if (acknowledged !== shows) throw new Error(`of ${shows} shows only ${acknowledged} acknowledged`);
    await end(child);
    return megabytes;
  };
  const peer = await megabytesOf(1);
  const ours = await megabytesOf(100);
  return {
    row: '100 shows open at once, an editor in each: memory; of one',
    ours,
    peer,
    ratio: (100 * peer) / ours,
    unit: 'MB',
  };
}

export async function run(): Promise<Row[]> {
  // Inside the project, so that packages are found from the bundles.
  const folder = mkdtempSync(join(import.meta.dirname, '..', '.strain-'));
  try {
    const bundle = (file: keyof Bundles): Promise<string> =>
      bundleForNode(join(import.meta.dirname, '..', 'bench', 'strain', `${file}.ts`), folder);
    const bundles: Bundles = {
      'our-server': await bundle('our-server'),
      'peer-server': await bundle('peer-server'),
      clients: await bundle('clients'),
      'many-shows': await bundle('many-shows'),
    };
    const rows: Row[] = [];
    for (const [people, seconds, framesGate] of [
      [50, 8, 10],
      [200, 3, 40],
    ] as const) {
      const peer = await measure(bundles['peer-server'], bundles.clients, people, seconds);
      const ours = await measure(bundles['our-server'], bundles.clients, people, seconds);
      rows.push(...rowsOf(people, ours, peer, framesGate));
      if (people !== 50) continue;
      const again = await measure(bundles['peer-server'], bundles.clients, people, seconds);
      rows.push({
        row: '  null: the peer against itself, CPU a message',
        ours: again.cpuMsPerMessage,
        peer: peer.cpuMsPerMessage,
        ratio: peer.cpuMsPerMessage / again.cpuMsPerMessage,
        unit: 'ms',
      });
    }
    rows.push(gapRow(), await showsRow(bundles['many-shows']));
    return rows;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
