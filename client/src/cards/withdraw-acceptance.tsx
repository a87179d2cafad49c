/** Takes a word on a caution back, with a reason, by who gave it or whoever is competent for it; the record keeps both. */
import { mayWithdraw } from '@enfilade/shared/accepted';
import type { Acceptance } from '@enfilade/shared/protocol';
import { useState } from 'react';
import { say } from '../shell/live-region.tsx';
import { useShow } from '../sync/hooks.ts';
import { ReasonForm } from './reason-form.tsx';

interface WithdrawProps {
  readonly accepted: Acceptance;
  /** What it is of, for whoever hears the button. */
  readonly name: string;
}

export function WithdrawAcceptance({ accepted, name }: WithdrawProps) {
  const show = useShow();
  const [open, setOpen] = useState(false);
  if (!mayWithdraw(accepted, show.me.person)) return null;
  if (!open) {
    return (
      <button type="button" aria-label={`take it back… ${name}: ${accepted.what}`} onClick={() => setOpen(true)}>
        take it back…
      </button>
    );
  }
  const withdraw = async (reason: string): Promise<string | null> => {
    const { pieceId, digest } = accepted;
    const answer = await show.send('withdraw-acceptances', { cautions: [{ pieceId, digest }], reason });
    if (!answer.ok) return answer.what;
    say('Taken back; the record keeps what was said, and why it holds no longer');
    setOpen(false);
    return null;
  };
  return (
    <ReasonForm
      label="Take the acceptance back"
      asks="Why it is taken back"
      done="Take it back"
      send={withdraw}
      leave={() => setOpen(false)}
    />
  );
}
