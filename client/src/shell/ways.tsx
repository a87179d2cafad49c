/** The ways about the show: only those that lead somewhere for this person. */
import { mayBringIn } from '@enfilade/shared/seats';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress, type View } from '../view-address.ts';
import { facedSurface, roomOfView, roomsInOrder } from './current-view.ts';

export function Ways({ view }: { readonly view: View }) {
  const show = useShow();
  useRoots('rooms');
  const room = roomOfView(view) ?? roomsInOrder(show.documents)[0] ?? null;
  const faced = facedSurface(view);
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
  ways.push({ name: 'Vignettes', to: { sheet: 'vignettes' }, here: view.sheet === 'vignettes' });
  ways.push({
    name: 'Paperwork',
    to: { sheet: 'paper', surface: view.sheet === 'wall' ? faced : null },
    here: view.sheet === 'paper',
  });
  if (show.may('rooms')) {
    ways.push({ name: 'Measure', to: { sheet: 'measure', roomId: room }, here: view.sheet === 'measure' });
  }
  return (
    <nav className="ways" aria-label="Ways">
      {ways.map(({ name, to, here }) => (
        <a key={name} href={toAddress(to)} aria-current={here ? 'page' : undefined}>
          {name}
        </a>
      ))}
    </nav>
  );
}
