/** A link just made: shown once, since the server keeps no link it could show again. */
import { useEffect, useId, useRef, useState } from 'react';
import { say } from '../shell/live-region.tsx';
import { copyText } from './seat-requests.ts';

interface SeatLinkProps {
  readonly name: string;
  readonly path: string;
  readonly done: () => void;
}

export function SeatLink({ name, path, done }: SeatLinkProps) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [copied, setCopied] = useState<boolean | null>(null);
  const link = `${location.origin}${path}`;
  useEffect(() => field.current?.focus(), []);
  const copy = async (): Promise<void> => {
    const there = await copyText(link, field.current);
    setCopied(there);
    say(there ? 'The link is copied.' : 'The link is chosen; copy it with the keys.');
  };
  return (
    <section className="card seats-card" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>A link for {name}</h2>
      <label htmlFor={id} className="spoken">
        Link for {name}
      </label>
      <input
        id={id}
        ref={field}
        className="seats-link"
        readOnly
        value={link}
        onFocus={(event) => event.target.select()}
      />
      <p className="t1">
        Shown once: nobody can look it up again, though a new one can be made. It opens on every device it is sent to.
      </p>
      <p className="seats-commands">
        <button type="button" className="act main" onClick={() => void copy()}>
          Copy the link
        </button>
        <button type="button" onClick={done}>
          Put it away
        </button>
        <span className="t1">{copied === null ? '' : copied ? 'copied' : 'chosen; copy it with the keys'}</span>
      </p>
    </section>
  );
}
