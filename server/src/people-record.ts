/** Who has, or had, a seat at the show, told to everybody in the record: names and roles, never a link or a cookie. */
import type { SeatedPerson } from '@enfilade/shared/protocol';
import type { Logger } from 'pino';
import type { Seats } from './seats.ts';
import type { Session } from './session.ts';

export class PeopleRecord {
  private readonly seats: Seats;
  private readonly record: Session;
  private readonly log: Logger;
  private writing: Promise<void> = Promise.resolve();
  private again = false;

  constructor(seats: Seats, record: Session, log: Logger) {
    this.seats = seats;
    this.record = record;
    this.log = log;
    seats.onChange(() => this.write());
  }

  /** Brings the record to what the seats are; several changes at once are one write. */
  write(): void {
    if (this.again) return;
    this.again = true;
    this.writing = this.writing
      .then(async () => {
        this.again = false;
        await this.bring(await this.seats.list());
      })
      .catch((error: unknown) => {
        // A log that cannot be written now: the next change, or the next start, brings it.
        this.log.warn({ event: 'people', kind: error instanceof Error ? error.name : typeof error });
      });
  }

  async settled(): Promise<void> {
    await this.writing;
  }

  private async bring(list: Awaited<ReturnType<Seats['list']>>): Promise<void> {
    const people = new Map<string, SeatedPerson & { gone: boolean }>();
    for (const { person, takenBack } of list) {
      const { id, name, role } = person;
      // Gone when every seat they had was taken back.
      const gone = takenBack !== null && people.get(id)?.gone !== false;
      people.set(id, gone ? { name, role, gone } : { name, role, gone: false });
    }
    const kept = this.record.doc.getMap<SeatedPerson>('people');
    const changed = [...people].filter(([id, { name, role, gone }]) => {
      const known = kept.get(id);
      return known?.name !== name || known.role !== role || (known.gone ?? false) !== gone;
    });
    if (changed.length === 0) return;
    await this.record.act((doc) => {
      for (const [id, person] of changed) doc.getMap('people').set(id, person);
    });
  }
}
