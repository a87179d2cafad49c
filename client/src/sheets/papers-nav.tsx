/** The papers there are, at the left of each: the vignette list, and a sheet for every wall. */
import type { SurfaceId } from '@enfilade/shared/schema';
import { WALL_SIDES, wallNameOf } from '@enfilade/space/room';
import type { ReactNode } from 'react';
import { roomsInOrder } from '../shell/current-view.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import './papers-nav.css';

interface PapersNavProps {
  /** The paper on screen: the list, or a wall. */
  readonly paper: 'vignettes' | 'samples' | 'paint-schedule' | SurfaceId | null;
  /** What can be done with it. */
  readonly children?: ReactNode;
}

export function PapersNav({ paper, children }: PapersNavProps) {
  const { documents } = useShow();
  useRoots('rooms', 'places');
  const hung = new Map<string, number>();
  for (const [on] of documents.all('places').values()) hung.set(on, (hung.get(on) ?? 0) + 1);
  return (
    <nav className="papers-nav" aria-label="Paperwork">
      <h2 className="papers-title">Paperwork</h2>
      <a href={toAddress({ sheet: 'vignettes' })} aria-current={paper === 'vignettes' ? 'page' : undefined}>
        Vignette list
      </a>
      <a href={toAddress({ sheet: 'samples' })} aria-current={paper === 'samples' ? 'page' : undefined}>
        Samples to post
      </a>
      <a href={toAddress({ sheet: 'paint-schedule' })} aria-current={paper === 'paint-schedule' ? 'page' : undefined}>
        Paint schedule
      </a>
      <a href={toAddress({ sheet: 'loans' })}>Loan lists</a>
      <a href={toAddress({ sheet: 'deck', paintId: null })}>The deck</a>
      <h3 className="papers-kind">Elevations and hanging</h3>
      <ul className="papers-rooms">
        {roomsInOrder(documents).map((roomId) => {
          const room = documents.get('rooms', roomId);
          if (room === undefined) return null;
          return (
            <li key={roomId}>
              <span className="papers-room">{room.name}</span>
              <ul className="papers-walls">
                {WALL_SIDES.map((side) => {
                  const surface = `${roomId}:${side}`;
                  const count = hung.get(surface) ?? 0;
                  return (
                    <li key={side}>
                      <a
                        href={toAddress({ sheet: 'paper', surface })}
                        aria-current={paper === surface ? 'page' : undefined}
                      >
                        {wallNameOf(room, side)}
                      </a>
                      <span className="papers-count">{count === 0 ? 'bare' : `${count} hung`}</span>
                    </li>
                  );
                })}
              </ul>
            </li>
          );
        })}
      </ul>
      {children === undefined ? null : <div className="papers-commands">{children}</div>}
    </nav>
  );
}
