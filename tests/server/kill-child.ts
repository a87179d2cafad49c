/** The server in a process of its own, to be killed: prints its port, then a link for one curator. */
import { startServer } from '@enfilade/server/server';

const [dataDirectory = ''] = process.argv.slice(2);
const server = await startServer({
  port: 0,
  host: '127.0.0.1',
  dataDirectory,
  // Small, so that compaction is among the things that are cut short.
  limits: { compactAfterUpdates: 40 },
});
const { token } = await server.seats.invite({ id: 'castellane', name: 'Dov Castellane', role: 'curator' });
process.stdout.write(`${JSON.stringify({ port: server.port, token })}\n`);
