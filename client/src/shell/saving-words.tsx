/** Where the work stands, in words; and the bands under the head when it does not stand well. */
import { useEffect } from 'react';
import { useSaving, useShow } from '../sync/hooks.ts';
import type { Saving } from '../sync/show-session.ts';
import { say } from './live-region.tsx';
import './bands.css';

/** '14:02' on this person's clock. */
function clockText(at: Date): string {
  return `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`;
}

function savingText(saving: Saving): string {
  switch (saving.kind) {
    case 'opening':
      return 'Opening';
    case 'saved':
      return `Saved ${clockText(saving.at)}`;
    case 'saving':
      return 'Saving';
    case 'no connection':
      return saving.unsent ? 'Not sent yet' : 'No connection';
    case 'read-only':
      return 'Cannot be saved';
    case 'closed':
      return 'Closed';
  }
}

export function SavingWords() {
  return <span className="saving-words">{savingText(useSaving())}</span>;
}

function bandOf(saving: Saving): { strong: string; rest: string } | null {
  switch (saving.kind) {
    case 'no connection':
      return {
        strong: `No connection since ${clockText(saving.since)}.`,
        rest: saving.unsent
          ? 'Kept in this page; go on working. It is sent when the connection returns: leave this page open.'
          : 'Go on working: what you do is kept in this page and sent when the connection returns.',
      };
    case 'read-only':
      return {
        strong: 'Read-only for now.',
        rest: `The server cannot write: ${saving.reason}. Nothing saved is lost; this page takes changes again when it can.`,
      };
    case 'closed':
      return {
        strong: 'This seat is closed.',
        rest: `${saving.reason}. What was saved is kept; load the page again, or ask for a new invitation.`,
      };
    default:
      return null;
  }
}

export function Bands() {
  const saving = useSaving();
  const { kind } = saving;
  const band = bandOf(saving);
  const strong = band?.strong;
  // biome-ignore lint/correctness/useExhaustiveDependencies: said once a state, not once a render
  useEffect(() => {
    if (band !== null) say(`${band.strong} ${band.rest}`);
  }, [kind, strong]);
  if (band === null) return null;
  return (
    <div className="band">
      <svg className="mark" width="14" height="20" viewBox="0 0 14 20" aria-hidden="true">
        <rect x=".75" y=".75" width="12.5" height="18.5" fill="none" stroke="currentColor" strokeWidth="1.5" />
        <path d="M5 16.5h4" stroke="currentColor" strokeWidth="1.5" />
      </svg>
      <p>
        <b className="b">{band.strong}</b> {band.rest}
      </p>
    </div>
  );
}

/** Told to who may not write the hang, once, under the head: what they see is the show itself. */
export function ViewerBand() {
  const show = useShow();
  if (show.may('hang')) return null;
  return (
    <p className="band viewer-band">
      {show.may('checklist')
        ? 'You keep the checklist. The hang is open to read, and moved by others.'
        : 'Open to read. Everything is live; nothing here can be moved or changed from your seat.'}
    </p>
  );
}
