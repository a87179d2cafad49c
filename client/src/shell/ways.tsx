/** The ways about the show: only those that lead somewhere for this person. */
import { mayBringIn, mayInvite } from '@enfilade/shared/seats';
import { choose, selection, useStore } from '../selection.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { useUnread, useWaitingCount } from '../talk/counts.ts';
import { useOpenProposals } from '../talk/open-proposals.ts';
import { go, toAddress, type View } from '../view-address.ts';
import { facedSurface, roomOfView, roomsInOrder } from './current-view.ts';
import { lostText, nextLost, useLostWorks } from './lost-works.ts';
import { ReadingMark } from './marks.tsx';

interface Way {
  readonly name: string;
  /** How many there are to look at, where it is told; in words where the bare figure would not say. */
  readonly count?: number;
  readonly told?: string;
  readonly to: View;
  /** Of which pages one is on it; unless given, of the one it leads to. */
  readonly here?: boolean;
}

/** What belongs together stands in one column. */
interface Column {
  readonly about: string;
  readonly ways: readonly (Way | false)[];
}

function useColumns(view: View): readonly Column[] {
  const show = useShow();
  useRoots('rooms');
  const room = roomOfView(view) ?? roomsInOrder(show.documents)[0] ?? null;
  const faced = facedSurface(view);
  const open = useOpenProposals();
  const unread = useUnread();
  const waiting = useWaitingCount();
  const { role } = show.me.person;
  const paper = faced !== null && show.judgements.where.wallOf(faced) !== null ? faced : null;
  return [
    {
      about: 'The building',
      ways: [
        room !== null && {
          name: 'Rooms',
          to: { sheet: 'room', roomId: room },
          here: view.sheet === 'room' || view.sheet === 'wall',
        },
        { name: 'Layout floor', to: { sheet: 'layout' } },
        show.may('rooms') && { name: 'Measure', to: { sheet: 'measure', roomId: room } },
      ],
    },
    {
      about: 'The things',
      ways: [
        { name: 'Collection', to: { sheet: 'collection', part: 'browse' } },
        mayBringIn(role) && { name: 'Bring in', to: { sheet: 'bring-in' } },
        mayBringIn(role) && { name: 'One thing', to: { sheet: 'one-thing' } },
        { name: 'Loans', to: { sheet: 'loans' } },
      ],
    },
    {
      about: 'Composing',
      ways: [
        { name: 'Colour desk', to: { sheet: 'colour' }, here: view.sheet === 'colour' || view.sheet === 'deck' },
        { name: 'Likenesses', to: { sheet: 'likenesses' } },
        { name: 'Vignettes', to: { sheet: 'vignettes' } },
      ],
    },
    {
      about: 'Agreeing',
      ways: [
        {
          name: 'Proposals',
          count: open,
          to: { sheet: 'proposals' },
          here: view.sheet === 'proposals' || (show.layerId !== null && view.sheet !== 'likenesses'),
        },
        { name: 'Remarks', count: unread, told: `${unread} not read`, to: { sheet: 'remarks' } },
        { name: 'Waiting', count: waiting, to: { sheet: 'waiting' } },
        { name: 'Cautions', to: { sheet: 'cautions' } },
      ],
    },
    {
      about: 'Kept',
      ways: [
        {
          name: 'Paperwork',
          to: { sheet: 'paper', surface: paper },
          here: view.sheet === 'paper' || view.sheet === 'samples' || view.sheet === 'paint-schedule',
        },
        { name: 'Take out', to: { sheet: 'take-out' } },
        { name: 'History', to: { sheet: 'history' } },
        mayInvite(role) && { name: 'Seats', to: { sheet: 'seats' } },
      ],
    },
  ];
}

export function Ways({ view }: { readonly view: View }) {
  const columns = useColumns(view);
  return (
    <nav className="ways" aria-label="Ways">
      {columns.map(({ about, ways }) => {
        const given = ways.filter((way) => way !== false);
        const lost = about === 'Composing' ? <LostWay /> : null;
        if (given.length === 0 && lost === null) return null;
        return (
          <ul key={about} aria-label={about}>
            {given.map(({ name, count = 0, told, to, here = view.sheet === to.sheet }) => (
              <li key={name}>
                <a href={toAddress(to)} aria-current={here ? 'page' : undefined} title={count === 0 ? undefined : told}>
                  {count === 0 ? name : `${name} ${count}`}
                </a>
              </li>
            ))}
            {lost}
          </ul>
        );
      })}
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
    <li>
      <button type="button" className="ways-lost" aria-label={words} title={words} onClick={show}>
        <ReadingMark word="lost" sizePx={13} />
        {lost.length} lost
      </button>
    </li>
  );
}
