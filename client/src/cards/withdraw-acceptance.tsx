/** Takes a word on a caution back, with a reason, by who gave it or whoever is competent for it; the record keeps both. */
import { mayWithdraw } from '@enfilade/shared/accepted';
import type { Acceptance } from '@enfilade/shared/protocol';
import { type FormEvent, useState } from 'react';
import { say } from '../shell/live-region.tsx';
import { useSaving, useShow } from '../sync/hooks.ts';

interface WithdrawProps {
  readonly accepted: Acceptance;
  /** What it is of, for whoever hears the button. */
  readonly name: string;
}

export function WithdrawAcceptance({ accepted, name }: WithdrawProps) {
  const show = useShow();
  const saving = useSaving();
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const [asking, setAsking] = useState(false);
  if (!mayWithdraw(accepted, show.me.person)) return null;
  if (!open) {
    return (
      <button type="button" aria-label={`take it back… ${name}: ${accepted.what}`} onClick={() => setOpen(true)}>
        take it back…
      </button>
    );
  }
  const withdraw = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (reason.trim() === '') return setTrouble('Say why: it is kept with your name.');
    setTrouble(null);
    setAsking(true);
    const { pieceId, digest } = accepted;
    const answer = await show.send('withdraw-acceptances', { cautions: [{ pieceId, digest }], reason });
    setAsking(false);
    if (!answer.ok) return setTrouble(answer.what);
    say('Taken back; the record keeps what was said, and why it holds no longer');
    setOpen(false);
  };
  return (
    <form className="accept-form" aria-label="Take the acceptance back" onSubmit={(event) => void withdraw(event)}>
      <label>
        Why it is taken back
        {/* biome-ignore lint/a11y/noAutofocus: the form is opened by a press, to be typed into */}
        <input autoFocus value={reason} maxLength={1000} onChange={(event) => setReason(event.target.value)} />
      </label>
      {trouble === null ? null : (
        <span className="b" role="alert">
          {trouble}
        </span>
      )}
      <span className="accept-commands">
        <button type="submit" className="act main" disabled={asking || saving.kind !== 'saved'}>
          Take it back
        </button>
        <button type="button" onClick={() => setOpen(false)}>
          leave it
        </button>
      </span>
    </form>
  );
}
