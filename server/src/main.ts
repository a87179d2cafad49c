/**
 * The server as it is started: `--port`/`PORT`, `--host`/`HOST`, `--data`/`ENFILADE_DATA`, `--client`, `--large`,
 * `--all-seats` (prints every seat's link), `--empty` (no demo: for a whole show that is to be taken in), `--tls` (with a certificate of this machine's own, or `--cert FILE --key FILE`), `--max-pages` (bounds the log's file, in pages of 4,096 bytes),
 * `ENFILADE_ORIGINS` (further origins pages may come from, with commas), `ENFILADE_LOG` (how much is told of what happens: `error`, `warn` unless given, `info`, `debug`).
 * Everything goes to the standard output, events as lines of JSON; no file of it is kept.
 * `backup --data FOLDER --to FILE` and `restore --from FILE --data FOLDER` do that and end.
 */
import { existsSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { Person } from '@enfilade/shared/seats';
import { backUp, restore } from './backup.ts';
import { fillWithDemo } from './demo/fill.ts';
import { invitationsFor } from './invitations.ts';
import { isLevel, logTo } from './log.ts';
import { startServer } from './server.ts';
import { type Certificate, certificateFrom, ownCertificate } from './tls.ts';

const DEFAULT_PORT = 4860;

/** Everybody at the demo show; the links of the first three are printed, of the others with `--all-seats`. */
const PEOPLE: readonly Person[] = [
  { id: 'castellane', name: 'Dov Castellane', role: 'curator' },
  { id: 'fennimarsh', name: 'Isolde Fennimarsh', role: 'guest artist' },
  { id: 'viewer', name: 'A viewer', role: 'viewer' },
  { id: 'halloway', name: 'Wren Halloway', role: 'lead' },
  { id: 'trevithian', name: 'Ama Trevithian', role: 'registrar' },
  { id: 'oyelaran', name: 'Piet Oyelaran', role: 'preparator' },
  { id: 'conservator', name: 'A conservator', role: 'conservator' },
];
const PRINTED: ReadonlySet<string> = new Set(PEOPLE.slice(0, 3).map(({ id }) => id));

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    port: { type: 'string' },
    host: { type: 'string' },
    data: { type: 'string' },
    client: { type: 'string' },
    'all-seats': { type: 'boolean', default: false },
    large: { type: 'boolean', default: false },
    empty: { type: 'boolean', default: false },
    'max-pages': { type: 'string' },
    tls: { type: 'boolean', default: false },
    cert: { type: 'string' },
    key: { type: 'string' },
    to: { type: 'string' },
    from: { type: 'string' },
  },
});

function portFrom(text: string): number {
  const port = Number(text);
  if (Number.isInteger(port) && port >= 0 && port < 65_536) return port;
  throw new RangeError(`a port is a number from 0 to 65535, not '${text}'`);
}

/** The client's build beside this file's folder, as both lie in the project. */
const builtClient = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'client', 'dist');

const dataDirectory = resolve(values.data ?? process.env.ENFILADE_DATA ?? 'data');

function fileFrom(option: 'to' | 'from'): string {
  const file = values[option];
  if (file !== undefined && file !== '') return resolve(file);
  throw new RangeError(`the file is given with --${option} FILE`);
}

async function runBackup(): Promise<void> {
  const file = fileFrom('to');
  const { files, bytes } = await backUp(dataDirectory, file);
  process.stdout.write(
    `Written: ${file}, ${(bytes / (1 << 20)).toFixed(1)} MB: the whole show and ${files} files of its pictures.\n`,
  );
}

async function runRestore(): Promise<void> {
  const { files, before } = await restore(fileFrom('from'), dataDirectory);
  process.stdout.write(
    `Restored into ${dataDirectory}: the whole show and ${files} files of its pictures.\n${
      before === null ? '' : `What was there before is kept in ${before}.\n`
    }Pages that are open must be loaded again; they say so.\n`,
  );
}

/** What must be done once on each device before it trusts this machine. */
function ownCertificateWords(url: string): string[] {
  return [
    '',
    'The certificate is this machine’s own: browsers warn of it, and keep nothing for work without a connection,',
    `until a device trusts it. On each one open ${url.replace('localhost', '<this machine>')}/certificate.pem once and trust it.`,
  ];
}

/** The certificate asked for: the files given, else this machine's own; undefined for plain HTTP. */
async function certificateAsked(): Promise<Certificate | undefined> {
  const { cert, key } = values;
  if ((cert === undefined) !== (key === undefined)) throw new RangeError('--cert FILE and --key FILE go together');
  if (cert !== undefined && key !== undefined) return certificateFrom(resolve(cert), resolve(key));
  return values.tls ? ownCertificate(dataDirectory) : undefined;
}

async function serve(): Promise<void> {
  const port = portFrom(values.port ?? process.env.PORT ?? String(DEFAULT_PORT));
  const host = values.host ?? process.env.HOST;
  const clientDirectory = values.client ?? builtClient;
  await mkdir(dataDirectory, { recursive: true, mode: 0o700 });
  const level = process.env.ENFILADE_LOG ?? 'warn';
  if (!isLevel(level)) throw new RangeError(`ENFILADE_LOG is error, warn, info or debug, not '${level}'`);
  const logger = logTo(1, level);
  const tls = await certificateAsked();
  const server = await startServer({
    port,
    dataDirectory,
    logger,
    allowedOrigins: (process.env.ENFILADE_ORIGINS ?? '').split(',').filter((origin) => origin !== ''),
    ...(host === undefined || host === '' ? {} : { host }),
    ...(tls === undefined ? {} : { tls }),
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
  if (!values.empty) {
    await fillWithDemo(server, { large: values.large, progress: (line) => process.stdout.write(`${line}\n`) });
  }
  const invitations = await invitationsFor(server.seats, dataDirectory, PEOPLE);
  const printed = invitations.filter(({ person }) => values['all-seats'] || PRINTED.has(person.id));
  const lines = printed.map(({ person, token }) => {
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
      ...(tls?.own ? ownCertificateWords(server.url) : []),
      '',
      ...lines,
      '',
      'ready',
      '',
    ].join('\n'),
  );
}

const COMMANDS: Readonly<Record<string, () => Promise<void>>> = { serve, backup: runBackup, restore: runRestore };

async function main(): Promise<void> {
  const [name = 'serve'] = positionals;
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command === undefined) throw new RangeError(`there is no command '${name}'; there are backup and restore`);
  await command();
}

main().catch((error: unknown) => {
  const inUse = (error as { code?: string }).code === 'EADDRINUSE';
  const text = error instanceof Error ? error.message : String(error);
  const what =
    positionals[0] === 'backup' || positionals[0] === 'restore'
      ? `The ${positionals[0]} was not made`
      : 'Enfilade did not start';
  process.stderr.write(`${what}: ${inUse ? 'that port is taken; give another with --port' : text}.\n`);
  process.exit(1);
});
