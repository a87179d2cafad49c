/** Who accepted a caution, that a word on it fell away, or the form by which somebody competent accepts it. */
import { acceptingOf, acceptorsText, type StandingCaution } from '@enfilade/shared/accepted';
import { ACCEPTED_AT_ONCE } from '@enfilade/shared/protocol';
import { useState } from 'react';
import { say } from '../shell/live-region.tsx';
import { useShow } from '../sync/hooks.ts';
import { dayText } from './day-text.ts';
import { ReasonForm } from './reason-form.tsx';
import { WithdrawAcceptance } from './withdraw-acceptance.tsx';
import './accept-caution.css';

interface AcceptCautionProps {
  readonly standing: StandingCaution;
  /** What it is of, for whoever hears the buttons. */
  readonly name: string;
}

export function AcceptCaution({ standing, name }: AcceptCautionProps) {
  const { me } = useShow();
  const [open, setOpen] = useState(false);
  const { accepted, lapsed, withdrawn, caution } = standing;
  if (accepted !== null) {
    const onWord = accepted.wordOf === '' ? '' : ` on the word of ${accepted.wordOf}`;
    return (
      <>
        <span className="accept-said">
          Accepted by {accepted.name}, {accepted.role}
          {onWord}, {dayText(accepted.at)}: {accepted.reason}
        </span>{' '}
        <WithdrawAcceptance accepted={accepted} name={name} />
      </>
    );
  }
  const how = acceptingOf(caution, me.person.role);
  return (
    <>
      {lapsed === null ? null : (
        <span className="accept-said">
          {lapsed.name} accepted it as it stood on {dayText(lapsed.at)}; it has changed since.
        </span>
      )}
      {withdrawn?.withdrawn === undefined ? null : (
        <span className="accept-said">
          {withdrawn.name} accepted it on {dayText(withdrawn.at)}; {withdrawn.withdrawn.name},{' '}
          {withdrawn.withdrawn.role}, took that back on {dayText(withdrawn.withdrawn.at)}: {withdrawn.withdrawn.reason}
        </span>
      )}
      {how === null ? (
        <span className="accept-said">For {acceptorsText(caution)} to accept.</span>
      ) : open ? (
        <AcceptForm standing={[standing]} onWord={how === 'a conservator’s word'} close={() => setOpen(false)} />
      ) : (
        <button type="button" aria-label={`accept… ${name}: ${caution.what}`} onClick={() => setOpen(true)}>
          accept…
        </button>
      )}
    </>
  );
}

interface AcceptFormProps {
  /** Accepted together, with one reason. */
  readonly standing: readonly StandingCaution[];
  readonly onWord: boolean;
  readonly close: () => void;
}

export function AcceptForm({ standing, onWord, close }: AcceptFormProps) {
  const show = useShow();
  const [wordOf, setWordOf] = useState('');
  const accept = async (reason: string): Promise<string | null> => {
    if (onWord && wordOf.trim() === '') return 'Name the conservator whose word it is.';
    for (let from = 0; from < standing.length; from += ACCEPTED_AT_ONCE) {
      const cautions = standing
        .slice(from, from + ACCEPTED_AT_ONCE)
        .map(({ pieceId, digest }) => ({ pieceId, digest }));
      const answer = await show.send('accept-cautions', { cautions, reason, wordOf: onWord ? wordOf : '' });
      if (!answer.ok) return answer.what;
    }
    say('Accepted; your name and your reason are kept with it');
    close();
    return null;
  };
  return (
    <ReasonForm
      label="Accept the caution"
      asks="Why it is accepted"
      done={`Accept ${standing.length === 1 ? 'as it stands' : `all ${standing.length} as they stand`}`}
      send={accept}
      leave={close}
    >
      {onWord ? (
        <label>
          On the word of, conservator
          <input value={wordOf} maxLength={120} onChange={(event) => setWordOf(event.target.value)} />
        </label>
      ) : null}
    </ReasonForm>
  );
}
