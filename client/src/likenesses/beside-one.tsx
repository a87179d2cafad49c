/** One suggestion beside a thing: its picture, its name, why, and what one can do with it. */
import type { Echo } from '@enfilade/grouping/echoes';
import { foundThing } from '@enfilade/shared/likeness-pools';
import { wordOf } from '@enfilade/shared/proposals';
import { type ObjectId, objectOfPiece, type PieceId } from '@enfilade/shared/schema';
import { declineSuggestion, suggestionKey } from '@enfilade/shared/suggestions';
import type { ReactNode } from 'react';
import { act } from '../cards/acting.ts';
import { choose } from '../selection.ts';
import { useShow } from '../sync/hooks.ts';
import type { View } from '../view-address.ts';
import { BringBeside } from './bring-beside.tsx';
import { EchoPair } from './echo-pair.tsx';
import { shownPiece, ThingPicture, thingName } from './thing-picture.tsx';

interface OneProps {
  readonly pieceId: PieceId;
  readonly view: View;
  readonly id: ObjectId;
  readonly heading?: string;
  readonly words: string;
  readonly suggestion: string;
  readonly pictures?: ReactNode;
}

export function BesideOne({ pieceId, view, id, heading, words, suggestion, pictures }: OneProps) {
  const show = useShow();
  const { judgements } = show;
  const thing = foundThing(judgements, id);
  const its = thing.free[0] ?? shownPiece(show, id);
  const unplaced = judgements.where.placeOf(its) === null;
  const name = thingName(show, id);
  return (
    <section className="beside-one" aria-label={heading === undefined ? name : `${heading}: ${name}`}>
      {heading === undefined ? null : <h4 className="t1 q">{heading}</h4>}
      {pictures ?? <ThingPicture id={id} boxPx={72} />}
      <p>
        <span className="it">{name}</span>
        <span className="t1 beside-why">{words}</span>
        {thing.why === '' ? null : <span className="t1 q beside-why">{thing.why}</span>}
      </p>
      <div className="object-commands">
        {unplaced && show.may('hang') ? <BringBeside anchor={pieceId} pieceId={its} name={name} view={view} /> : null}
        <button type="button" aria-label={`select both: ${name}`} onClick={() => choose([pieceId, its])}>
          select both
        </button>
        <Decline suggestion={suggestion} what={name} />
      </div>
    </section>
  );
}

interface EchoProps {
  readonly pieceId: PieceId;
  readonly view: View;
  readonly echo: Echo;
  readonly heading?: string;
}

export function EchoOne({ pieceId, view, echo, heading }: EchoProps) {
  const id = objectOfPiece(pieceId);
  return (
    <BesideOne
      pieceId={pieceId}
      view={view}
      id={echo.id}
      words={echo.words}
      suggestion={suggestionKey('echo', [id, echo.id])}
      {...(heading === undefined ? {} : { heading })}
      pictures={<EchoPair own={id} echo={echo} />}
    />
  );
}

export function Decline({ suggestion, what }: { readonly suggestion: string; readonly what: string }) {
  const show = useShow();
  if (!show.may('talk')) return null;
  return (
    <button
      type="button"
      aria-label={`not this: ${what}`}
      onClick={() =>
        act(
          show,
          declineSuggestion(show.documents, suggestion, wordOf(show.me.person, new Date())),
          'declined; it stays away until the checklist is another',
        )
      }
    >
      not this
    </button>
  );
}
