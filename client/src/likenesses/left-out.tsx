/** What is in no set, and why. */
import type { Likenesses, WhyLeftOut } from '@enfilade/grouping/likeness';
import { capital } from '@enfilade/shared/surface-names';
import { useState } from 'react';
import { useShow } from '../sync/hooks.ts';
import { ThingPicture, thingName } from './thing-picture.tsx';

const SHOWN = 40;

export function LeftOut({ leftOut }: { readonly leftOut: Likenesses['leftOut'] }) {
  const show = useShow();
  const [open, setOpen] = useState<WhyLeftOut | null>(null);
  const whys = [...new Set(leftOut.map(({ why }) => why))];
  const byWhy = whys.map((why) => [why, leftOut.filter((thing) => thing.why === why)] as const);
  if (leftOut.length === 0) return null;
  return (
    <section className="left-out" aria-label="In no set">
      <h2>In no set, {leftOut.length}</h2>
      {byWhy.map(([why, list]) => (
        <div key={why}>
          <h3>
            <button type="button" aria-expanded={open === why} onClick={() => setOpen(open === why ? null : why)}>
              {capital(why)}, {list.length}
            </button>
          </h3>
          {open === why ? (
            <ul className="found-pictures">
              {list.slice(0, SHOWN).map(({ id }) => (
                <li key={id} title={thingName(show, id)}>
                  <span className="spoken">{thingName(show, id)}</span>
                  <ThingPicture id={id} boxPx={48} />
                </li>
              ))}
              {list.length > SHOWN ? <li className="t1">and {list.length - SHOWN} more</li> : null}
            </ul>
          ) : null}
        </div>
      ))}
    </section>
  );
}
