/** One set: who is in it and who is left out, with why; and the ways on from here. */
import * as commands from '@enfilade/shared/commands';
import { type FoundThing, foundThing } from '@enfilade/shared/likeness-pools';
import { wordOf } from '@enfilade/shared/proposals';
import type { ObjectId } from '@enfilade/shared/schema';
import { declineSuggestion, suggestionKey } from '@enfilade/shared/suggestions';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { largestOf } from '../cards/hang-targets.ts';
import { VignetteForm } from '../cards/vignette-form.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { TakeTo } from './take-to.tsx';
import { scaleFor, ThingPicture, thingName } from './thing-picture.tsx';

/** So many are shown at first. */
const SHOWN = 48;

export interface SetWords {
  readonly members: readonly ObjectId[];
  readonly title: string;
  /** `29 of 32 are copper, fluted …: 91 % of these, 6 % of the rest`. */
  readonly reason: string;
  /** How firmly it stands, in words and figures. */
  readonly standing: string;
  /** Others that come close, or that differ within it, each with what sets it apart. */
  readonly besides: readonly { readonly id: ObjectId; readonly words: string }[];
  readonly besidesAre: string;
}

export function FoundSet({ set }: { readonly set: SetWords }) {
  const show = useShow();
  const { judgements, documents } = show;
  useRoots('places', 'memberOf', 'vignettes', 'pieces', 'objects');
  const [turned, setTurned] = useState<ReadonlySet<ObjectId>>(new Set());
  const [form, setForm] = useState(false);
  const [gathered, setGathered] = useState<string | null>(null);
  const [all, setAll] = useState(false);
  const members = set.members.map((id) => foundThing(judgements, id)).filter((thing) => thing.all.length > 0);
  const misses = set.besides.filter(({ id }) => !set.members.includes(id)).map(({ id }) => foundThing(judgements, id));
  // A member comes in where some of it is free, and a near miss only where a person says so.
  const isIn = (id: ObjectId, free: number, member: boolean): boolean => (member && free > 0) !== turned.has(id);
  const inMembers = members.filter(({ id, free }) => isIn(id, free.length, true));
  const included = [...inMembers, ...misses.filter(({ id, free }) => isIn(id, free.length, false))];
  const out = members.filter((thing) => !included.includes(thing));
  const pieces = included.flatMap(({ free, all: every }) => (free.length > 0 ? free : every));
  const turn = (id: ObjectId): void => {
    const next = new Set(turned);
    if (!next.delete(id)) next.add(id);
    setTurned(next);
  };
  const scale = scaleFor(
    show,
    included.map(({ id }) => id),
    96,
    150,
  );
  const shown = all ? included : included.slice(0, SHOWN);
  const may = show.may('hang') && pieces.length > 0;
  return (
    <article className="found-set" aria-label={set.title}>
      <div className="found-words">
        <h3>{set.title}</h3>
        <p className="cap">{set.reason}</p>
        <p className="t1">{set.standing}</p>
        {gathered === null ? null : (
          <p className="cap">
            Gathered as <b className="b">{gathered}</b>; it stands in the{' '}
            <a href={toAddress({ sheet: 'vignettes' })}>vignette list</a>.
          </p>
        )}
        {form ? (
          <VignetteForm
            name={set.title}
            intent=""
            focal={largestOf(pieces, (pieceId) => judgements.sizeOf(pieceId)?.heightMm ?? 0)}
            pieces={pieces}
            done="gather"
            take={(words) => {
              if (!act(show, () => commands.gather(documents, words, pieces), `${words.name} gathered`)) return;
              setForm(false);
              setGathered(words.name);
            }}
            leave={() => setForm(false)}
          />
        ) : (
          <p className="found-commands">
            {may ? (
              <button type="button" onClick={() => setForm(true)}>
                gather {pieces.length} into a vignette…
              </button>
            ) : null}
            {show.may('talk') && show.layerId === null ? (
              <button
                type="button"
                onClick={() =>
                  act(
                    show,
                    declineSuggestion(documents, suggestionKey('set', set.members), wordOf(show.me.person, new Date())),
                    'declined; it stays away until the checklist is another',
                  )
                }
              >
                not this one
              </button>
            ) : null}
          </p>
        )}
        {pieces.length > 0 ? <TakeTo pieceIds={pieces} /> : null}
      </div>
      <div className="found-things">
        <h4>
          Included, {included.length}
          {pieces.length > included.length ? `: ${pieces.length} pieces` : ''}
        </h4>
        {included.length === 0 ? (
          <p className="t1">None of it is free. Press a picture below to include it all the same.</p>
        ) : (
          <ul className="found-pictures">
            {shown.map(({ id, free, all: every }) => (
              <li key={id}>
                <button
                  type="button"
                  className="bare found-thing"
                  title={`${thingName(show, id)}: press to leave it out`}
                  aria-label={`${thingName(show, id)}${every.length > 1 ? `, ${free.length} of ${every.length}` : ''}: leave out`}
                  onClick={() => turn(id)}
                >
                  <ThingPicture id={id} scale={scale} boxPx={150} />
                </button>
              </li>
            ))}
            {included.length > shown.length ? (
              <li>
                <button type="button" onClick={() => setAll(true)}>
                  all {included.length}
                </button>
              </li>
            ) : null}
          </ul>
        )}
        <LeftOutOf out={out} turn={turn} />
        <Aside
          heading={set.besidesAre}
          rows={set.besides}
          verbOf={(id) => (included.some((thing) => thing.id === id) ? 'leave out' : 'include')}
          turn={turn}
        />
      </div>
    </article>
  );
}

/** Those left out of a set, by why: the same why is said once. */
function LeftOutOf({ out, turn }: { readonly out: readonly FoundThing[]; readonly turn: (id: ObjectId) => void }) {
  const show = useShow();
  if (out.length === 0) return null;
  const why = (thing: FoundThing): string => thing.why || 'left out by you';
  return (
    <div className="found-out">
      <h4>Left out, {out.length}</h4>
      <ul>
        {[...new Set(out.map(why))].map((said) => {
          const list = out.filter((thing) => why(thing) === said);
          return (
            <li key={said}>
              <p className="t1">
                {said}
                {list.length > 1 ? `, ${list.length}` : ''}
              </p>
              <span className="found-row">
                {list.map(({ id }) => (
                  <button
                    key={id}
                    type="button"
                    className="bare found-thing"
                    aria-label={`${thingName(show, id)}: include`}
                    title={`${thingName(show, id)}: press to include it`}
                    onClick={() => turn(id)}
                  >
                    <ThingPicture id={id} boxPx={34} />
                  </button>
                ))}
              </span>
            </li>
          );
        })}
      </ul>
    </div>
  );
}

interface AsideProps {
  readonly heading: string;
  readonly rows: readonly { readonly id: ObjectId; readonly words: string }[];
  /** What a press does. */
  readonly verbOf: (id: ObjectId) => 'include' | 'leave out';
  readonly turn: (id: ObjectId) => void;
}

function Aside({ heading, rows, verbOf, turn }: AsideProps) {
  const show = useShow();
  const [open, setOpen] = useState(false);
  if (rows.length === 0) return null;
  const shown = open ? rows : rows.slice(0, 4);
  return (
    <div className="found-aside">
      <h4>
        {heading}, {rows.length}
      </h4>
      <ul>
        {shown.map(({ id, words }) => (
          <li key={id}>
            <button
              type="button"
              className="bare found-thing"
              aria-label={`${thingName(show, id)}: ${verbOf(id)}`}
              title={`Press to ${verbOf(id)}`}
              onClick={() => turn(id)}
            >
              <ThingPicture id={id} boxPx={34} />
            </button>
            <span className="t1">
              {thingName(show, id)}
              <br />
              {words}
            </span>
          </li>
        ))}
      </ul>
      {rows.length > shown.length ? (
        <button type="button" className="t1" onClick={() => setOpen(true)}>
          {rows.length - shown.length} more
        </button>
      ) : null}
    </div>
  );
}
