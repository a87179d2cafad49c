/** Words for a remark or an answer; a remark can ask somebody by name, by a day. */
import type { Asked } from '@enfilade/shared/talk';
import { useId, useState } from 'react';
import { useRoots, useShow } from '../sync/hooks.ts';

/** Remarks are sentences, not papers. */
const LONGEST = 2000;

export function RemarkForm({
  label,
  done,
  asks = false,
  take,
  leave,
}: {
  readonly label: string;
  readonly done: string;
  /** Whether somebody can be asked. */
  readonly asks?: boolean;
  readonly take: (text: string, asked: Asked | null) => void;
  readonly leave: () => void;
}) {
  const { documents, me } = useShow();
  useRoots('people');
  const id = useId();
  const [text, setText] = useState('');
  const [personId, setPersonId] = useState('');
  const [byDay, setByDay] = useState('');
  const people = [...documents.all('people')]
    .filter(([other, { gone }]) => other !== me.person.id && gone !== true)
    .sort(([, a], [, b]) => (a.name < b.name ? -1 : 1));
  const say = (): void => {
    if (text.trim() === '') return;
    const person = documents.get('people', personId);
    const asked = person === undefined ? null : { personId, name: person.name, ...(byDay === '' ? {} : { byDay }) };
    take(text.trim(), asked);
  };
  return (
    <form
      className="remark-form"
      onSubmit={(event) => {
        event.preventDefault();
        say();
      }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        leave();
      }}
    >
      <label className="spoken" htmlFor={`${id}-text`}>
        {label}
      </label>
      <textarea
        id={`${id}-text`}
        // biome-ignore lint/a11y/noAutofocus: the form opens by a press on its command, and is there to be written in
        autoFocus
        rows={3}
        maxLength={LONGEST}
        value={text}
        placeholder={label}
        onChange={(event) => setText(event.target.value)}
      />
      {asks && people.length > 0 ? (
        <div className="remark-ask">
          <label htmlFor={`${id}-who`}>Ask</label>
          <select id={`${id}-who`} value={personId} onChange={(event) => setPersonId(event.target.value)}>
            <option value="">nobody by name</option>
            {people.map(([other, { name, role }]) => (
              <option key={other} value={other}>
                {name}, {role}
              </option>
            ))}
          </select>
          {personId === '' ? null : (
            <>
              <label htmlFor={`${id}-day`}>by</label>
              <input id={`${id}-day`} type="date" value={byDay} onChange={(event) => setByDay(event.target.value)} />
            </>
          )}
        </div>
      ) : null}
      <p className="remark-commands">
        <button type="submit" disabled={text.trim() === ''}>
          {done}
        </button>
        <button type="button" onClick={leave}>
          leave it
        </button>
      </p>
    </form>
  );
}
