/** The ways about the show: only those that lead somewhere for this person. */
import { mayBringIn, mayInvite } from '@enfilade/shared/seats';
import { choose, selection, useStore } from '../selection.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { useUnread, useWaitingCount } from '../talk/counts.ts';
import { useOpenProposals } from '../talk/open-proposals.ts';
import { go, toAddress, type View } from '../view-address.ts';
import { facedSurface, roomOfView, roomsInOrder } from './current-view.ts';
import { lostCountText, lostText, nextLost, useLostWorks } from './lost-works.ts';
import { ReadingMark } from './marks.tsx';

export function Ways({ view }: { readonly view: View }) {
  const show = useShow();
  useRoots('rooms');
  const room = roomOfView(view) ?? roomsInOrder(show.documents)[0] ?? null;
  const faced = facedSurface(view);
  const open = useOpenProposals();
  const ways: { name: string; to: View; here: boolean }[] = [];
  if (room !== null) {
    ways.push({
      name: 'Rooms',
      to: { sheet: 'room', roomId: room },
      here: view.sheet === 'room' || view.sheet === 'wall',
    });
  }
  ways.push({ name: 'Layout floor', to: { sheet: 'layout' }, here: view.sheet === 'layout' });
  if (mayBringIn(show.me.person.role)) {
    ways.push({ name: 'Bring in', to: { sheet: 'bring-in' }, here: view.sheet === 'bring-in' });
  }
  ways.push({ name: 'Colour desk', to: { sheet: 'colour' }, here: view.sheet === 'colour' || view.sheet === 'deck' });
  ways.push({ name: 'Vignettes', to: { sheet: 'vignettes' }, here: view.sheet === 'vignettes' });
  ways.push({
    name: open === 0 ? 'Proposals' : `Proposals ${open}`,
    to: { sheet: 'proposals' },
    here: view.sheet === 'proposals' || show.layerId !== null,
  });
  const unread = useUnread();
  ways.push({
    name: unread === 0 ? 'Remarks' : `Remarks, ${unread} not read`,
    to: { sheet: 'remarks' },
    here: view.sheet === 'remarks',
  });
  const waiting = useWaitingCount();
  ways.push({
    name: waiting === 0 ? 'Waiting' : `Waiting ${waiting}`,
    to: { sheet: 'waiting' },
    here: view.sheet === 'waiting',
  });
  ways.push({ name: 'History', to: { sheet: 'history' }, here: view.sheet === 'history' });
  ways.push({
    name: 'Paperwork',
    to: { sheet: 'paper', surface: faced !== null && show.judgements.where.wallOf(faced) !== null ? faced : null },
    here: view.sheet === 'paper' || view.sheet === 'samples',
  });
  if (show.may('rooms')) {
    ways.push({ name: 'Measure', to: { sheet: 'measure', roomId: room }, here: view.sheet === 'measure' });
  }
  if (mayInvite(show.me.person.role)) {
    ways.push({ name: 'Seats', to: { sheet: 'seats' }, here: view.sheet === 'seats' });
  }
  return (
    <nav className="ways" aria-label="Ways">
      {ways.map(({ name, to, here }) => (
        <a key={name} href={toAddress(to)} aria-current={here ? 'page' : undefined}>
          {name}
        </a>
      ))}
      <LostWay />
    </nav>
  );
}

/** How many works are lost on their walls; a press goes to one of them and the next press to the next. */
function LostWay() {
  const { judgements } = useShow();
  const lost = useLostWorks();
  const chosen = useStore(selection);
  const next = nextLost(lost, chosen);
  if (next === undefined) return null;
  const words = lostText(judgements, lost.length, next);
  const show = (): void => {
    go({ sheet: 'wall', surface: next.surface });
    choose([next.pieceId]);
  };
  return (
    <button type="button" className="ways-lost" aria-label={words} title={words} onClick={show}>
      <ReadingMark word="lost" sizePx={13} />
      {lostCountText(lost.length)}
    </button>
  );
}
