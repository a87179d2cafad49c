/** One line of what waits: by when, what, on whom, and the way there. */
import type { WaitingLine } from '@enfilade/shared/waiting';
import { useState } from 'react';
import { choose } from '../selection.ts';
import { Ring } from '../shell/ring.tsx';
import { useShow } from '../sync/hooks.ts';
import { goToRemark } from '../talk/go-to-remark.ts';
import { viewOfSurface } from '../talk/remark-words.ts';
import { go, THE_HANG } from '../view-address.ts';
import { LoanLoss } from './loan-loss.tsx';
import { daysBetween, shortDay } from './waiting-days.ts';
import './loans.css';
import { WaitingMark } from './waiting-mark.tsx';

const KIND_WORDS: Record<WaitingLine['kind'], string> = {
  clash: 'a clash',
  loan: 'a loan',
  'sign-off': 'a sign-off',
  question: 'a question',
  proposal: 'a proposal',
  sample: 'a sample',
  size: 'a size',
  picture: 'a picture',
  caution: 'cautions',
};

export function WaitingRow({
  line,
  number,
  today,
}: {
  readonly line: WaitingLine;
  readonly number: number;
  readonly today: string;
}) {
  const show = useShow();
  const { judgements } = show;
  const { goes } = line;
  const [open, setOpen] = useState(false);
  const lost = lostOf(show, line);
  const late = line.byDay !== null && daysBetween(today, line.byDay) < 0;
  const whom = whomOf(line, show.documents.all('people'));
  const there = (): void => {
    if (goes.kind === 'proposal') go({ sheet: 'proposals' });
    else if (goes.kind === 'loans' || goes.kind === 'cautions') go({ sheet: goes.kind });
    else if (goes.kind === 'paint') go({ sheet: 'deck', paintId: goes.paintId });
    else if (goes.kind === 'remark') {
      if (!goToRemark(judgements, goes.remarkId, goes.about)) go({ sheet: 'remarks' });
    } else if (goes.kind === 'vignette') {
      const view = goes.surface === null ? null : viewOfSurface(goes.surface);
      go(view ?? { sheet: 'vignettes' }, THE_HANG);
    } else {
      const [first] = goes.pieceIds;
      const surface = first === undefined ? null : judgements.where.surfaceOf(first);
      go((surface === null ? null : viewOfSurface(surface)) ?? { sheet: 'layout' }, THE_HANG);
      choose(first === undefined ? [] : [first]);
    }
  };
  return (
    <li className="waiting-row">
      <span className="waiting-number" aria-hidden="true">
        {number}
      </span>
      <span className="waiting-day t4">
        {line.byDay === null ? <span className="t1">no day</span> : shortDay(line.byDay, today)}
        {late ? <b className="t1 b"> overdue</b> : null}
      </span>
      <span className="waiting-kind t1">
        <WaitingMark kind={line.kind} />
        {KIND_WORDS[line.kind]}
      </span>
      <span className="waiting-what">
        <span className="waiting-title">{line.title}</span>
        <span className="t1">{line.detail}</span>
        {lost === undefined ? null : (
          <button type="button" className="t1 waiting-more" aria-expanded={open} onClick={() => setOpen(!open)}>
            what breaks, what could stand in<span className="spoken"> for {lost.title}</span>
          </button>
        )}
      </span>
      <span className="waiting-whom">
        {whom.map(({ id, name, role }) => (
          <span key={id + name} className="waiting-person">
            {id === '' ? null : <Ring name={name} pattern={show.presence.ringOf(id)} radiusPx={10} />}
            <span>
              <span className="serif">{name}</span>
              {role === '' ? null : <span className="t1"> {role}</span>}
            </span>
          </span>
        ))}
      </span>
      <button type="button" onClick={there} aria-label={`go there: ${line.title}`}>
        go there
      </button>
      {open && lost !== undefined ? <LoanLoss record={lost} /> : null}
    </li>
  );
}

/** The lent record that fell away, where the line is of one. */
function lostOf({ documents }: ReturnType<typeof useShow>, { lost }: WaitingLine) {
  if (lost === undefined) return undefined;
  const object = documents.get('objects', lost);
  return { objectId: lost, title: object?.title || object?.number || 'it' };
}

/** Persons by name; for a role, whoever holds it, or the role itself where nobody does. */
function whomOf(
  line: WaitingLine,
  people: ReadonlyMap<string, { readonly name: string; readonly role: string; readonly gone?: boolean }>,
): { id: string; name: string; role: string }[] {
  if (line.persons.length > 0) {
    return line.persons.map(({ id, name }) => ({ id, name, role: people.get(id)?.role ?? '' }));
  }
  return line.roles.flatMap((role) => {
    const holders = [...people].filter(([, person]) => person.role === role && person.gone !== true);
    if (holders.length === 0) return [{ id: '', name: `a ${role}`, role: 'no seat yet' }];
    return holders.map(([id, { name }]) => ({ id, name, role }));
  });
}
