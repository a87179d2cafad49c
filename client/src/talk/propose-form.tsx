/** Beginning a proposal: its title and its reason in words; whoever begins one then stands in it. */
import { propose, wordOf } from '@enfilade/shared/proposals';
import { type FormEvent, useId, useState } from 'react';
import { act } from '../cards/acting.ts';
import { useHang } from '../sync/hooks.ts';
import { go, type View } from '../view-address.ts';
import './propose-form.css';

/** The text command, and the form it opens. Nothing for who may not talk. */
export function ProposeCommand({ view }: { readonly view: View }) {
  const hang = useHang();
  const [open, setOpen] = useState(false);
  if (!hang.may('talk')) return null;
  return (
    <div className="propose">
      <button type="button" className="t1" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? 'no proposal after all' : 'propose…'}
      </button>
      {open ? <ProposeForm view={view} /> : null}
    </div>
  );
}

function ProposeForm({ view }: { readonly view: View }) {
  const hang = useHang();
  const id = useId();
  const [title, setTitle] = useState('');
  const [reason, setReason] = useState('');
  const [wrong, setWrong] = useState(false);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const words = { title: title.trim(), reason: reason.trim() };
    setWrong(words.title === '');
    if (words.title === '') return;
    const made = propose(words, wordOf(hang.me.person, new Date()));
    const done = `In the proposal ${words.title}: whatever you do now is proposed; the hang stays as it is`;
    if (act(hang, made, done)) go(view, { kind: 'proposal', id: made.id });
  };
  return (
    <form className="propose-form" onSubmit={submit}>
      <p>Everything you do in a proposal is laid over the hang, which stays as it is until somebody takes it.</p>
      <label htmlFor={`${id}-title`}>Title</label>
      <input
        id={`${id}-title`}
        value={title}
        autoComplete="off"
        // biome-ignore lint/a11y/noAutofocus: the form opens because the person asked to write in it
        autoFocus
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-wrong` : undefined}
        onChange={(event) => setTitle(event.target.value)}
      />
      {wrong ? (
        <p id={`${id}-wrong`} role="alert" className="b">
          It needs a title, so that others can speak of it.
        </p>
      ) : null}
      <label htmlFor={`${id}-reason`}>Reason, in your words</label>
      <textarea id={`${id}-reason`} rows={4} value={reason} onChange={(event) => setReason(event.target.value)} />
      <button type="submit" className="act main">
        Begin the proposal
      </button>
    </form>
  );
}
