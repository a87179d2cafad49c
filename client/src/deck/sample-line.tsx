/** One sample of a paint: where it has come to, who has said what of it, and what comes next. */
import { wordOf } from '@enfilade/shared/proposals';
import {
  APPROVERS,
  dropSample,
  SAMPLE_LIGHTS,
  type SampleStanding,
  sayOfSample,
  sendSample,
  takeApprovalBack,
} from '@enfilade/shared/samples';
import { type FormEvent, useId, useState } from 'react';
import { act } from '../cards/acting.ts';
import { dayText } from '../cards/day-text.ts';
import { todayIso } from '../sheets/waiting-days.ts';
import { useShow } from '../sync/hooks.ts';
import { SampleMark } from './sample-mark.tsx';

export function SampleLine({ standing, name }: { readonly standing: SampleStanding; readonly name: string }) {
  const show = useShow();
  const [seeing, setSeeing] = useState(false);
  const { person } = show.me;
  const { id, sample, state, seen, approved } = standing;
  const mayApprove = show.may('talk') && (APPROVERS.includes(person.role) || sample.to.personId === person.id);
  const own = approved.some(({ by }) => by === person.id);
  const what = `the ${sample.kind} of ${name}`;
  const say = (said: Parameters<typeof sayOfSample>[1], words: string): boolean =>
    act(show, sayOfSample(id, said, wordOf(person, new Date())), words);
  return (
    <li className="sample-line">
      <SampleMark state={state} />
      <div>
        <p>
          <span className="serif">{sample.kind}</span> for {sample.to.name}:{' '}
          {sample.sentOn ? `sent ${dayText(sample.sentOn)}` : 'to be ordered and posted'}
        </p>
        {[...seen, ...approved].map((word) => (
          <p className="t1" key={`${word.by} ${word.said} ${word.under ?? ''}`}>
            {word.said === 'approved' ? 'approved' : 'seen'} by {word.name}
            {word.under ? ` under ${word.under}` : ''}, {dayText(word.at)}
          </p>
        ))}
        <p className="sample-commands">
          {state === 'to post' && show.may('checklist') ? (
            <button type="button" onClick={() => act(show, sendSample(id, todayIso()), `${what} is sent today`)}>
              sent today<span className="spoken">: {what}</span>
            </button>
          ) : null}
          {show.may('talk') && sample.sentOn ? (
            <button type="button" aria-expanded={seeing} onClick={() => setSeeing(!seeing)}>
              I have seen it…<span className="spoken"> {what}</span>
            </button>
          ) : null}
          {mayApprove && sample.sentOn && !own ? (
            <button type="button" onClick={() => say({ said: 'approved' }, `${what} is approved`)}>
              approve it<span className="spoken">: {what}</span>
            </button>
          ) : null}
          {own && show.may('talk') ? (
            <button
              type="button"
              onClick={() => act(show, takeApprovalBack(id, person.id), 'your approval is taken back')}
            >
              take my approval back<span className="spoken"> of {what}</span>
            </button>
          ) : null}
          {show.may('checklist') ? (
            <button type="button" onClick={() => act(show, dropSample(id), `${what} is dropped; undo brings it back`)}>
              drop it<span className="spoken">: {what}</span>
            </button>
          ) : null}
        </p>
        {seeing ? (
          <SeenForm
            what={what}
            take={(under) => {
              if (say({ said: 'seen', under }, `${what} is seen under ${under}`)) setSeeing(false);
            }}
          />
        ) : null}
      </div>
    </li>
  );
}

function SeenForm({ what, take }: { readonly what: string; readonly take: (under: string) => void }) {
  const id = useId();
  const [under, setUnder] = useState<string>(SAMPLE_LIGHTS[0]);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (under.trim() !== '') take(under.trim().slice(0, 60));
  };
  return (
    <form className="deck-form" onSubmit={submit} aria-label={`Seen: ${what}`}>
      <span>
        <label htmlFor={`${id}-under`}>Under which light</label>
        <input
          id={`${id}-under`}
          className="deck-form-name"
          list={`${id}-lights`}
          value={under}
          autoComplete="off"
          onChange={(event) => setUnder(event.target.value)}
        />
        <datalist id={`${id}-lights`}>
          {SAMPLE_LIGHTS.map((light) => (
            <option key={light} value={light} />
          ))}
        </datalist>
      </span>
      <button type="submit" className="act main">
        I have seen it
      </button>
    </form>
  );
}
