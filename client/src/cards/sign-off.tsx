/** Signing a vignette as it stands, with one press: what the press signs is what was on the page before it. */
import type { VignetteStanding } from '@enfilade/shared/judgements';
import type { VignetteId } from '@enfilade/shared/schema';
import { maySignOff } from '@enfilade/shared/seats';
import { useRef, useState } from 'react';
import { say } from '../shell/live-region.tsx';
import { useSaving, useShow } from '../sync/hooks.ts';

interface SignOffProps {
  readonly vignetteId: VignetteId;
  readonly name: string;
  readonly standing: VignetteStanding;
  /** Where several stand on a page, each says of which it is. */
  readonly named?: boolean;
}

/** Nothing for who may not sign, has signed what stands, or is not in the hang itself. */
export function SignOff({ vignetteId, name, standing, named = false }: SignOffProps) {
  const show = useShow();
  const saving = useSaving();
  const [signing, setSigning] = useState(false);
  const command = useRef<HTMLButtonElement>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const mine = standing.signatures.find(({ personId }) => personId === show.me.person.id);
  const again = mine !== undefined && mine.changes.length > 0;
  if (show.layerId !== null || !maySignOff(show.me.person.role) || (mine !== undefined && !again)) return null;
  const words = again ? 'sign off again as it stands' : 'sign off as it stands';
  const sign = async (): Promise<void> => {
    const pressed = command.current;
    const beside =
      pressed?.closest('tr')?.querySelector<HTMLElement>('a') ??
      pressed?.parentElement?.querySelector<HTMLElement>('button:not(.sign-off)');
    setTrouble(null);
    setSigning(true);
    const answer = await show.send('sign-off', { vignetteId, digest: standing.digest });
    setSigning(false);
    if (!answer.ok) {
      setTrouble(answer.what);
      return;
    }
    say(`${name} signed off${again ? ' again' : ''} by ${show.me.person.name}`);
    // The command goes with what it was for; the focus stays beside it.
    const at = document.activeElement;
    if (at === pressed || at === document.body) beside?.focus();
  };
  return (
    <>
      <button
        ref={command}
        type="button"
        className="sign-off"
        aria-label={named ? `${words}: ${name}` : undefined}
        disabled={saving.kind !== 'saved' || signing}
        onClick={() => void sign()}
      >
        {words}
      </button>
      {trouble === null ? null : (
        <span className="t1 b sign-off-trouble" role="alert">
          Not signed: {trouble}
        </span>
      )}
    </>
  );
}
