/** Inviting somebody: a name, a role that is no more than one's own, and a last day or none. */
import { maySeat, ROLES, type Role } from '@enfilade/shared/seats';
import { type Invited, NAME_LENGTH, personNameFrom } from '@enfilade/shared/seats-page';
import { type FormEvent, useId, useState } from 'react';
import { useShow } from '../sync/hooks.ts';
import { type Asked, askOf } from './seat-requests.ts';

/** The last moment of a day on this person's calendar, ISO 8601. */
function endOfDay(day: string): string {
  return new Date(`${day}T23:59:59.999`).toISOString();
}

/** '2026-11-25' on this person's calendar. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}

export function InviteForm({ take }: { readonly take: (asked: Asked<Invited>) => boolean }) {
  const { base, me } = useShow();
  const id = useId();
  const [name, setName] = useState('');
  const [role, setRole] = useState<Role>('viewer');
  const [day, setDay] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const [asking, setAsking] = useState(false);
  const roles = ROLES.filter((one) => maySeat(me.person.role, one));

  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (asking) return;
    if (personNameFrom(name) === null) {
      setWrong('Who is it? A name is missing.');
      return;
    }
    if (day !== '' && day < today()) {
      setWrong('That day has passed.');
      return;
    }
    setAsking(true);
    const asked = await askOf<Invited>(base, 'invite', { name, role, until: day === '' ? null : endOfDay(day) });
    setAsking(false);
    setWrong(asked.ok ? null : asked.what);
    if (!asked.ok) return;
    take(asked);
    setName('');
    setDay('');
  };
  return (
    <form
      className="card seats-card"
      aria-labelledby={`${id}-title`}
      noValidate
      onSubmit={(event) => void submit(event)}
    >
      <h2 id={`${id}-title`}>Invite somebody</h2>
      <div className="sheet-field">
        <label htmlFor={`${id}-name`}>Name</label>
        <input
          id={`${id}-name`}
          className="sheet-words"
          autoComplete="off"
          maxLength={NAME_LENGTH}
          value={name}
          aria-invalid={wrong !== null}
          aria-describedby={wrong === null ? undefined : `${id}-wrong`}
          onChange={(event) => setName(event.target.value)}
        />
      </div>
      <div className="sheet-field">
        <label htmlFor={`${id}-role`}>Role</label>
        <select
          id={`${id}-role`}
          className="sheet-words"
          value={role}
          onChange={(event) => setRole(event.target.value as Role)}
        >
          {roles.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </div>
      <div className="sheet-field">
        <label htmlFor={`${id}-day`}>Last day, if any</label>
        <input
          id={`${id}-day`}
          className="sheet-words"
          type="date"
          min={today()}
          value={day}
          onChange={(event) => setDay(event.target.value)}
        />
      </div>
      {wrong === null ? null : (
        <p className="typed-wrong" id={`${id}-wrong`} role="alert">
          {wrong}
        </p>
      )}
      <p className="seats-commands">
        <button type="submit" className="act main" aria-disabled={asking}>
          Make a link
        </button>
      </p>
    </form>
  );
}
