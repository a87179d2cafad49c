/**
 * The demo's links, printable at every start. The store keeps hashes only, so the links themselves are kept in a file
 * of their own that nobody else on the machine may read. Whoever has that file has those seats: delete it, and the
 * links stay good but are printed no more.
 */
import { chmod, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Person } from '@enfilade/shared/seats';
import type { Seats } from './seats.ts';
import { newSecret } from './secrets.ts';

const FILE = 'invitations.json';

interface KeptInvitation {
  readonly person: Person;
  readonly token: string;
}

/**
 * One invitation for each person; those already invited keep theirs.
 * @returns those whose link is good: not of who was taken back, or was given a new link since.
 */
export async function invitationsFor(
  seats: Seats,
  dataDirectory: string,
  people: readonly Person[],
): Promise<KeptInvitation[]> {
  const path = join(dataDirectory, FILE);
  const kept = await readFile(path, 'utf8').then(
    (text) => JSON.parse(text) as KeptInvitation[],
    () => [] as KeptInvitation[],
  );
  const invitations = people.map(
    (person) => kept.find((known) => known.person.id === person.id) ?? { person, token: newSecret() },
  );
  // The file before the seats: a link that was printed is never lost to a stop in between.
  await writeFile(`${path}.part`, `${JSON.stringify(invitations, null, 2)}\n`, { mode: 0o600 });
  await chmod(`${path}.part`, 0o600);
  await rename(`${path}.part`, path);
  const good: KeptInvitation[] = [];
  for (const invitation of invitations) {
    const { person, token } = invitation;
    // Once only: a seat that was taken back stays so, at every start.
    if (!(await seats.knows(person.id))) await seats.invite(person, token);
    const seat = seats.invited(token);
    if (seat !== undefined) good.push({ person: seat.person, token });
  }
  return good;
}
