/** Who has a seat at the show: invited here by name and role, changed, and taken back. */
import { mayInvite, ROLES } from '@enfilade/shared/seats';
import type { Invited, SeatEntry } from '@enfilade/shared/seats-page';
import { useCallback, useEffect, useState } from 'react';
import { dayText } from '../cards/day-text.ts';
import { say } from '../shell/live-region.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import { ArtistSetting } from './artist-setting.tsx';
import { InviteForm } from './invite-form.tsx';
import { SeatLink } from './seat-link.tsx';
import { type Asked, fetchSeats } from './seat-requests.ts';
import { SeatRow } from './seat-row.tsx';
import './sheet-fields.css';
import './seats.css';

/** In order of role, then of name. */
function inOrder(entries: readonly SeatEntry[]): SeatEntry[] {
  return [...entries].sort(
    (a, b) => ROLES.indexOf(a.person.role) - ROLES.indexOf(b.person.role) || a.person.name.localeCompare(b.person.name),
  );
}

export function Seats() {
  const { me } = useShow();
  return mayInvite(me.person.role) ? (
    <SeatsPage />
  ) : (
    <p className="cap sheet-wait">A lead or a curator gives and takes back seats.</p>
  );
}

function SeatsPage() {
  const { base } = useShow();
  // Whoever else invites changes the list of people, and with it this one.
  const people = useRoots('people');
  const [entries, setEntries] = useState<readonly SeatEntry[] | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const [invited, setInvited] = useState<Invited | null>(null);

  const take = useCallback((asked: Asked<readonly SeatEntry[]>): boolean => {
    setWrong(asked.ok ? null : asked.what);
    if (asked.ok) setEntries(asked.body);
    return asked.ok;
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the people are the occasion
  useEffect(() => {
    void fetchSeats(base).then(take);
  }, [base, take, people]);

  const takeLink = (asked: Asked<Invited>): boolean => {
    take(asked.ok ? { ok: true, body: asked.body.seats } : asked);
    if (asked.ok) setInvited(asked.body);
    return asked.ok;
  };
  const open = inOrder(entries?.filter(({ takenBack }) => takenBack === null) ?? []);
  const past = inOrder(entries?.filter(({ takenBack }) => takenBack !== null) ?? []);
  const linked = open.find(({ seatId }) => seatId === invited?.seatId);
  return (
    <div className="seats">
      <section className="seats-list" aria-labelledby="seats-title">
        <h1 id="seats-title">Seats</h1>
        <p className="cap seats-lead">
          A seat is given by a link, to one person, in one role. Whoever opens the link sits there: send it to nobody
          else.
        </p>
        {wrong === null ? null : (
          <p className="seats-wrong" role="alert">
            {wrong}
          </p>
        )}
        {entries === null ? (
          wrong === null ? (
            <p className="cap">Fetching the seats…</p>
          ) : null
        ) : (
          <table className="seats-table">
            <thead>
              <tr>
                <th scope="col">Name</th>
                <th scope="col">Role</th>
                <th scope="col">Holds</th>
                <th scope="col">Link opened</th>
                <th scope="col">
                  <span className="spoken">What can be done</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {open.map((entry) => (
                <SeatRow key={entry.seatId} entry={entry} take={take} takeLink={takeLink} />
              ))}
            </tbody>
          </table>
        )}
        {past.length === 0 ? null : (
          <details className="seats-past">
            <summary>Taken back: {past.length}</summary>
            <ul>
              {past.map(({ seatId, person, takenBack }) => (
                <li key={seatId}>
                  {person.name}, {person.role}: {dayText(takenBack ?? '')}
                </li>
              ))}
            </ul>
          </details>
        )}
      </section>
      <div className="seats-side">
        {invited === null || linked === undefined ? null : (
          <SeatLink
            key={invited.path}
            name={linked.person.name}
            path={invited.path}
            done={() => {
              setInvited(null);
              say('The link is put away.');
            }}
          />
        )}
        <InviteForm take={takeLink} />
        <ArtistSetting />
      </div>
    </div>
  );
}
