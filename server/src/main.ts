/**
 * The server as it is started: `--port`/`PORT`, `--host`/`HOST`, `--data`/`ENFILADE_DATA`, `--client`, `--large`,
 * `--max-pages` (bounds the log's file, in pages of 4,096 bytes), `ENFILADE_ORIGINS` (further origins pages may come
 * from, with commas). The log of events goes to `server.log` in the data folder; the screen is for people.
 */
import { existsSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { Person } from '@enfilade/shared/seats';
import { fillWithDemo } from './demo/fill.ts';
import { invitationsFor } from './invitations.ts';
import { logTo } from './log.ts';
import { startServer } from './server.ts';

const DEFAULT_PORT = 4860;

const PEOPLE: readonly Person[] = [
  { id: 'castellane', name: 'Dov Castellane', role: 'curator' },
  { id: 'fennimarsh', name: 'Isolde Fennimarsh', role: 'guest artist' },
  { id: 'viewer', name: 'A viewer', role: 'viewer' },
];

const { values } = parseArgs({
  options: {
    port: { type: 'string' },
    host: { type: 'string' },
    data: { type: 'string' },
    client: { type: 'string' },
    large: { type: 'boolean', default: false },
    'max-pages': { type: 'string' },
  },
});

function portFrom(text: string): number {
  const port = Number(text);
  if (Number.isInteger(port) && port >= 0 && port < 65_536) return port;
  throw new RangeError(`a port is a number from 0 to 65535, not '${text}'`);
}

/** The client's build beside this file's folder, as both lie in the project. */
const builtClient = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'client', 'dist');

async function main(): Promise<void> {
  const port = portFrom(values.port ?? process.env.PORT ?? String(DEFAULT_PORT));
  const host = values.host ?? process.env.HOST;
  const dataDirectory = resolve(values.data ?? process.env.ENFILADE_DATA ?? 'data');
  const clientDirectory = values.client ?? builtClient;
  await mkdir(dataDirectory, { recursive: true, mode: 0o700 });
  const logger = logTo(join(dataDirectory, 'server.log'));
  const server = await startServer({
    port,
    dataDirectory,
    logger,
    allowedOrigins: (process.env.ENFILADE_ORIGINS ?? '').split(',').filter((origin) => origin !== ''),
    ...(host === undefined || host === '' ? {} : { host }),
    ...(existsSync(clientDirectory) ? { clientDirectory } : {}),
  });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      server.close().then(
        () => process.exit(0),
        () => process.exit(1),
      );
    });
  }
  await fillWithDemo(server, { large: values.large, progress: (line) => process.stdout.write(`${line}\n`) });
  const invitations = await invitationsFor(server.seats, dataDirectory, PEOPLE);
  const lines = invitations.map(({ person, token }) => {
    return `  ${person.role.padEnd(14)}${person.name.padEnd(20)}${server.url}/join/${token}`;
  });
  const pages = values['max-pages'];
  if (pages !== undefined) server.store.limitPages(Number(pages));
  process.stdout.write(
    [
      '',
      `Enfilade is at ${server.url}`,
      'One link for each seat; open several in one browser if you like. They are kept in',
      `${join(dataDirectory, 'invitations.json')}, readable by you alone.`,
      '',
      ...lines,
      '',
      'ready',
      '',
    ].join('\n'),
  );
}

main().catch((error: unknown) => {
  const inUse = (error as { code?: string }).code === 'EADDRINUSE';
  const text = error instanceof Error ? error.message : String(error);
  process.stderr.write(`Enfilade did not start: ${inUse ? 'that port is taken; give another with --port' : text}.\n`);
  process.exit(1);
});
