/** A sample asked for, or said to be sent: which, to whom, on what day. */
import { askForSample } from '@enfilade/shared/samples';
import type { PaintId, SampleKind } from '@enfilade/shared/schema';
import { type FormEvent, useId, useState } from 'react';
import { act } from '../cards/acting.ts';
import { todayIso } from '../sheets/waiting-days.ts';
import { useRoots, useShow } from '../sync/hooks.ts';

export function SampleForm({ paintId, name, done }: { paintId: PaintId; name: string; done: () => void }) {
  const show = useShow();
  const { documents } = show;
  useRoots('people');
  const id = useId();
  const people = [...documents.all('people')].filter(([, { gone, role }]) => gone !== true && role !== 'viewer');
  const artist = people.find(([, { role }]) => role === 'guest artist')?.[1].name ?? '';
  const [kind, setKind] = useState<SampleKind>('drawdown');
  const [to, setTo] = useState(artist);
  const [sentOn, setSentOn] = useState('');
  const [asked, setAsked] = useState(false);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setAsked(true);
    const typed = to.trim();
    if (typed === '') return;
    const personId = people.find(([, person]) => person.name.toLowerCase() === typed.toLowerCase())?.[0] ?? '';
    const made = askForSample(paintId, { kind, to: { personId, name: typed }, sentOn });
    const said =
      sentOn === '' ? `A ${kind} of ${name} is to be posted to ${typed}` : `A ${kind} of ${name} is sent to ${typed}`;
    if (act(show, made, said)) done();
  };
  return (
    <form className="deck-form" onSubmit={submit} noValidate aria-label={`A sample of ${name}`}>
      <span>
        <label htmlFor={`${id}-kind`}>Sample</label>
        <select id={`${id}-kind`} value={kind} onChange={(event) => setKind(event.target.value as SampleKind)}>
          <option value="drawdown">drawdown, on card</option>
          <option value="sample board">sample board, two coats</option>
        </select>
      </span>
      <span>
        <label htmlFor={`${id}-to`}>To</label>
        <input
          id={`${id}-to`}
          className="deck-form-name"
          list={`${id}-people`}
          value={to}
          autoComplete="off"
          aria-invalid={asked && to.trim() === ''}
          onChange={(event) => setTo(event.target.value)}
        />
        <datalist id={`${id}-people`}>
          {people.map(([personId, person]) => (
            <option key={personId} value={person.name} />
          ))}
        </datalist>
      </span>
      <span>
        <label htmlFor={`${id}-on`}>Sent on</label>
        <input
          id={`${id}-on`}
          type="date"
          max={todayIso()}
          value={sentOn}
          onChange={(event) => setSentOn(event.target.value)}
        />
      </span>
      <button type="submit" className="act main">
        {sentOn === '' ? 'Ask for it' : 'It is sent'}
      </button>
      <button type="button" className="act" onClick={done}>
        leave it
      </button>
      <p className="deck-form-words t1" role={asked && to.trim() === '' ? 'alert' : undefined}>
        {asked && to.trim() === ''
          ? 'To whom does it go? Nothing is asked for yet.'
          : 'Without a day it stands on the list of samples to post.'}
      </p>
    </form>
  );
}
