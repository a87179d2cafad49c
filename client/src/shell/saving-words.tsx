/** Where the work stands, in words; and the bands under the head when it does not stand well. */
import { useEffect } from 'react';
import { forgetSeat } from '../sync/forget-seat.ts';
import { useEntity, useSaving, useShow, useTold } from '../sync/hooks.ts';
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
      return saving.unsent.length > 0 ? (saving.kept ? 'Kept here' : 'Not sent yet') : 'No connection';
    case 'read-only':
      return 'Cannot be saved';
    case 'closed':
      return 'Closed';
  }
}

export function SavingWords() {
  return <span className="saving-words">{savingText(useSaving())}</span>;
}

interface Band {
  readonly strong: string;
  readonly rest: string;
  /** Acts of this page that are in no log. */
  readonly unsent?: readonly string[];
  /** What they are called in the list: 'Not saved' unless given. */
  readonly word?: string;
  /** This page shows something that the show does not hold. */
  readonly anew?: boolean;
}

function bandOf(saving: Saving): Band | null {
  switch (saving.kind) {
    case 'no connection':
      return awayBand(saving);
    case 'read-only':
      return {
        strong: 'Read-only for now.',
        rest: `${saving.reason} What was saved is kept; nothing more is taken until it can.${
          saving.unsent.length === 0
            ? ''
            : ' What you did last is not saved. It is kept in this page and sent when the server can write again: leave this page open.'
        }`,
        unsent: saving.unsent,
      };
    case 'closed':
      return {
        strong: saving.strong,
        rest: `${saving.reason}${
          saving.unsent.length === 0
            ? ''
            : ' What you did last was not saved and is shown in this page only; note what you need before you leave it.'
        }`,
        unsent: saving.unsent,
      };
    default:
      return null;
  }
}

/** 'Kept on this tablet. No connection since 14:09; go on working. 3 acts wait to be sent, nothing is lost.' */
function awayBand({ since, unsent, kept }: Extract<Saving, { kind: 'no connection' }>): Band {
  const lost = `No connection since ${clockText(since)}`;
  if (!kept) {
    return {
      strong: `${lost}.`,
      rest:
        unsent.length > 0
          ? 'Kept in this page; go on working. It is sent when the connection returns: leave this page open.'
          : 'Go on working: what you do is kept in this page and sent when the connection returns.',
    };
  }
  const device = matchMedia('(pointer: coarse)').matches ? 'tablet' : 'computer';
  if (unsent.length === 0) {
    return {
      strong: `${lost}.`,
      rest: `Go on working: what you do is kept on this ${device} and sent when it returns.`,
    };
  }
  return {
    strong: `Kept on this ${device}.`,
    rest: `${lost}; go on working. ${unsent.length === 1 ? 'One act waits' : `${unsent.length} acts wait`} to be sent, nothing is lost.`,
    unsent,
    word: 'Waiting',
  };
}

/** More than this many unsaved acts are counted, not listed. */
const LISTED = 12;

function OpenAnew() {
  const { me } = useShow();
  return (
    <button type="button" onClick={() => void forgetSeat(me.seatId).then(() => location.reload())}>
      Open the show as it stands
    </button>
  );
}

function BandOf({ band }: { readonly band: Band }) {
  const { strong, rest, unsent = [], anew = false, word = 'Not saved' } = band;
  useEffect(() => say(`${strong} ${rest}`), [strong, rest]);
  const listed = unsent.slice(-LISTED);
  return (
    <div className="band">
      <svg className="mark" width="14" height="20" viewBox="0 0 14 20" aria-hidden="true">
        <rect x=".75" y=".75" width="12.5" height="18.5" fill="none" stroke="currentColor" strokeWidth="1.5" />
        <path d="M5 16.5h4" stroke="currentColor" strokeWidth="1.5" />
      </svg>
      <p>
        <b className="b">{strong}</b> {rest}
        {listed.length === 0 ? null : (
          <>
            {' '}
            {word}: {unsent.length > listed.length ? `${unsent.length - listed.length} before, then ` : ''}
            {listed.join('; ')}.
          </>
        )}
      </p>
      {anew ? <OpenAnew /> : null}
    </div>
  );
}

export function Bands() {
  const band = bandOf(useSaving());
  const told = useTold();
  return (
    <>
      {band === null ? null : <BandOf band={band} />}
      {told === null ? null : (
        <BandOf band={{ strong: told.strong, rest: told.reason, anew: told.discard !== undefined }} />
      )}
    </>
  );
}

/** Told to who may not write the hang, once, under the head: what they see is the show itself. */
export function ViewerBand() {
  const show = useShow();
  const proposing = useEntity('settings', 'artistProposesOnly') === true;
  // In a proposal or a kept state its own band says what can be done.
  if (show.layerId !== null || show.may('hang')) return null;
  if (proposing && show.me.person.role === 'guest artist') {
    return (
      <p className="band viewer-band">
        The hang is moved by others in this show. What you would have otherwise, put in a proposal.
      </p>
    );
  }
  return (
    <p className="band viewer-band">
      {show.may('checklist')
        ? 'You keep the checklist. The hang is open to read, and moved by others.'
        : 'Open to read. Everything is live; nothing here can be moved or changed from your seat.'}
    </p>
  );
}
