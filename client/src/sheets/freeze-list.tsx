/** Freezing the list as it stands: a command for those who may change the hang; where it is frozen already, that it is. */
import type { FrozenAnswer } from '@enfilade/shared/protocol';
import { capital } from '@enfilade/shared/surface-names';
import { useRef, useState } from 'react';
import { say } from '../shell/live-region.tsx';
import { useSaving, useShow } from '../sync/hooks.ts';
import type { ListNow } from './use-list.ts';

interface FreezeListProps {
  readonly now: ListNow;
  /** Why it is a draft. */
  readonly draft: string;
}

export function FreezeList({ now: { versions, digest, highest }, draft }: FreezeListProps) {
  const show = useShow();
  const saving = useSaving();
  const [trouble, setTrouble] = useState<string | null>(null);
  const [asking, setAsking] = useState(false);
  const state = useRef<HTMLParagraphElement>(null);
  const [newest] = versions;
  const frozen = newest?.digest === digest ? newest : null;
  const freeze = async (): Promise<void> => {
    setTrouble(null);
    setAsking(true);
    const answer = await show.send('freeze-list', {});
    setAsking(false);
    if (!answer.ok) {
      setTrouble(answer.what);
      return;
    }
    const { version, again } = answer.body as FrozenAnswer;
    say(
      again
        ? `This very list is version ${version.number}: it keeps its number`
        : `The vignette list is frozen as version ${version.number}`,
    );
    // The command goes with what it was for; whoever pressed it is left where it was.
    state.current?.focus();
  };
  return (
    <>
      {frozen === null && show.may('hang') ? (
        <button
          type="button"
          className="act main"
          disabled={saving.kind !== 'saved' || asking}
          onClick={() => void freeze()}
        >
          Freeze as version {highest + 1}
        </button>
      ) : null}
      <p ref={state} tabIndex={-1}>
        {frozen === null ? `${capital(draft)}.` : `Frozen as version ${frozen.number}: nothing has changed since.`}
      </p>
      {trouble === null ? null : (
        <p className="b" role="alert">
          Not frozen: {trouble}
        </p>
      )}
    </>
  );
}
