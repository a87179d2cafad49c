/** A reason that the record keeps with one's name: written, sent, and what stood against it told. */
import { type FormEvent, type ReactNode, useState } from 'react';
import { useSaving } from '../sync/hooks.ts';

interface ReasonFormProps {
  readonly label: string;
  /** Over the field for the reason. */
  readonly asks: string;
  /** The words on the press that sends it. */
  readonly done: string;
  /** Answers what stands against it, null when it is taken. */
  readonly send: (reason: string) => Promise<string | null>;
  readonly leave: () => void;
  /** Further fields. */
  readonly children?: ReactNode;
}

export function ReasonForm({ label, asks, done, send, leave, children }: ReasonFormProps) {
  const saving = useSaving();
  const [reason, setReason] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const [asking, setAsking] = useState(false);
  const take = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (reason.trim() === '') return setTrouble('Say why: it is kept with your name.');
    setTrouble(null);
    setAsking(true);
    const against = await send(reason);
    setAsking(false);
    if (against !== null) setTrouble(against);
  };
  return (
    <form className="accept-form" aria-label={label} onSubmit={(event) => void take(event)}>
      <label>
        {asks}
        {/* biome-ignore lint/a11y/noAutofocus: the form is opened by a press, to be typed into */}
        <input autoFocus value={reason} maxLength={1000} onChange={(event) => setReason(event.target.value)} />
      </label>
      {children}
      {trouble === null ? null : (
        <span className="b" role="alert">
          {trouble}
        </span>
      )}
      <span className="accept-commands">
        <button type="submit" className="act main" disabled={asking || saving.kind !== 'saved'}>
          {done}
        </button>
        <button type="button" onClick={leave}>
          leave it
        </button>
      </span>
    </form>
  );
}
