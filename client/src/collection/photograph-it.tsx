/** One photograph for a record that has none, from this device: sent, then set with its day. What fails says so. */
import * as commands from '@enfilade/shared/commands';
import { mayBringIn } from '@enfilade/shared/seats';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { todayIso } from '../sheets/waiting-days.ts';
import { useShow } from '../sync/hooks.ts';

export function PhotographIt({ id, title }: { readonly id: string; readonly title: string }) {
  const show = useShow();
  const [said, setSaid] = useState<string | null>(null);
  if (!mayBringIn(show.me.person.role)) return null;
  const take = async (file: File): Promise<void> => {
    setSaid('Sending…');
    try {
      const answer = await show.pictures.send(file, AbortSignal.timeout(SENDING_MS));
      if (!('sha256' in answer)) return setSaid(answer.what);
      const fields = { picture: answer.sha256, photographedOn: todayIso() };
      const made = { ...commands.correctObject(id, fields), name: `photograph ${title}` };
      setSaid(act(show, made, `${title} has its picture`) ? null : 'It cannot be written just now; try again.');
    } catch {
      setSaid('It did not arrive. Take it again when the connection is back.');
    }
  };
  return <PhotographButton title={title} take={(file) => void take(file)} said={said} />;
}

interface PhotographButtonProps {
  readonly title: string;
  readonly take: (file: File) => void;
  /** How it goes, or what went wrong; null: nothing to say. */
  readonly said: string | null;
  /** Among many others: no louder than they are. */
  readonly quiet?: boolean;
}

export function PhotographButton({ title, take, said, quiet = false }: PhotographButtonProps) {
  return (
    <div>
      <span className="bi-chooser">
        <input
          type="file"
          accept="image/*"
          capture="environment"
          aria-label={`Photograph ${title}`}
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            event.target.value = '';
            if (file !== undefined) take(file);
          }}
        />
        <span className={quiet ? 'cmd' : 'act'} aria-hidden="true">
          Photograph
        </span>
      </span>
      {said === null ? null : (
        <p className="t1" role="status">
          {said}
        </p>
      )}
    </div>
  );
}

/** A phone at the end of a corridor may be slow; longer than this it will not come, ms. */
export const SENDING_MS = 120_000;
