/** On a thing's card, folded: what goes with it, and what echoes it. Nothing is looked for until one of them is opened. */
import type { Echo } from '@enfilade/grouping/echoes';
import { foundThing } from '@enfilade/shared/likeness-pools';
import { wordOf } from '@enfilade/shared/proposals';
import { type ObjectId, objectOfPiece, type PieceId } from '@enfilade/shared/schema';
import { declinedSuggestions, declineSuggestion, suggestionKey } from '@enfilade/shared/suggestions';
import type { ReactNode } from 'react';
import { act } from '../cards/acting.ts';
import { CardGroup, useGroup } from '../cards/card-group.tsx';
import { choose } from '../selection.ts';
import { placeOnStage } from '../shell/stage-hand.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress, type View } from '../view-address.ts';
import { EchoPair } from './echo-pair.tsx';
import { shownPiece, ThingPicture, thingName } from './thing-picture.tsx';
import { type BesideState, useBeside } from './use-beside.ts';
import './beside-block.css';

const GOES = 'What goes with this';
const ECHOES = 'Echoes';

interface BlockProps {
  readonly pieceId: PieceId;
  readonly view: View;
}

export function BesideBlock({ pieceId, view }: BlockProps) {
  const id = objectOfPiece(pieceId);
  const [goes] = useGroup(GOES);
  const [echoes] = useGroup(ECHOES);
  const beside = useBeside(id, goes || echoes);
  return (
    <>
      <CardGroup name={GOES} brief="sets, a focal work">
        <Waiting beside={beside}>
          <GoesWith pieceId={pieceId} view={view} beside={beside} />
        </Waiting>
      </CardGroup>
      <CardGroup name={ECHOES} brief="unlike, yet answering">
        <Waiting beside={beside}>
          <Echoes pieceId={pieceId} view={view} beside={beside} />
        </Waiting>
      </CardGroup>
    </>
  );
}

function Waiting({ beside, children }: { readonly beside: BesideState; readonly children: ReactNode }) {
  if (beside === null) return <p className="t1 q">Looking through the checklist…</p>;
  if (typeof beside === 'string') return <p className="t1">Nothing could be looked for: {beside}.</p>;
  return children;
}

type PartProps = BlockProps & { readonly beside: BesideState };

function GoesWith({ pieceId, view, beside }: PartProps) {
  const show = useShow();
  useRoots('declinedSuggestions', 'places', 'memberOf', 'vignettes');
  if (beside === null || typeof beside === 'string') return null;
  const { goes, set } = beside;
  const id = objectOfPiece(pieceId);
  const away = declinedSuggestions(show.documents);
  const others = set.filter((other) => other !== id);
  const pieces = [pieceId, ...others.flatMap((other) => foundThing(show.judgements, other).free)];
  const inSet = goes.set !== undefined && others.length > 0 && !away.has(suggestionKey('set', set));
  const focal = goes.focal !== undefined && !away.has(suggestionKey('focal', [id, goes.focal.id])) ? goes.focal : null;
  const companion =
    goes.companion !== undefined && !away.has(suggestionKey('echo', [id, goes.companion.echo.id]))
      ? goes.companion
      : null;
  return (
    <div className="beside">
      {inSet ? (
        <section aria-label="Its set">
          <p className="t1">It {goes.set?.words}.</p>
          <p className="beside-set">
            {others.slice(0, 9).map((other) => (
              <ThingPicture key={other} id={other} boxPx={26} />
            ))}
            {others.length > 9 ? <span className="t1 q">and {others.length - 9}</span> : null}
          </p>
          <p className="object-commands">
            {pieces.length > 1 ? (
              <button type="button" onClick={() => choose(pieces)}>
                select it with the {pieces.length - 1} that are free
              </button>
            ) : null}
            <Decline suggestion={suggestionKey('set', set)} what="this set" />
          </p>
        </section>
      ) : null}
      {focal === null ? null : (
        <One
          pieceId={pieceId}
          view={view}
          id={focal.id}
          heading="A focal work to carry it"
          words={focal.words}
          suggestion={suggestionKey('focal', [id, focal.id])}
        />
      )}
      {companion === null ? null : (
        <EchoOne pieceId={pieceId} view={view} echo={companion.echo} heading="A companion of its size" />
      )}
      {inSet && focal !== null && companion !== null ? null : <p className="t1 q">{wanting(goes.words)}</p>}
      <p className="t1">
        <a href={toAddress({ sheet: 'likenesses' })}>look for sets</a>
      </p>
    </div>
  );
}

/** What the engine says is wanting, as a sentence. */
function wanting(words: string): string {
  return words.startsWith('a set,') ? 'The rest was declined.' : `${words[0]?.toUpperCase()}${words.slice(1)}.`;
}

function Echoes({ pieceId, view, beside }: PartProps) {
  const show = useShow();
  useRoots('declinedSuggestions', 'places', 'memberOf', 'vignettes');
  if (beside === null || typeof beside === 'string') return null;
  const id = objectOfPiece(pieceId);
  const away = declinedSuggestions(show.documents);
  const echoes = beside.echoes.filter((echo) => !away.has(suggestionKey('echo', [id, echo.id])));
  if (echoes.length === 0) {
    return (
      <p className="t1 q">
        {beside.echoes.length === 0
          ? 'Nothing of another kind or time is near it in colour or outline.'
          : 'What echoed it was declined.'}
      </p>
    );
  }
  return (
    <div className="beside">
      {echoes.map((echo) => (
        <EchoOne key={echo.id} pieceId={pieceId} view={view} echo={echo} />
      ))}
    </div>
  );
}

function EchoOne({ pieceId, view, echo, heading }: BlockProps & { readonly echo: Echo; readonly heading?: string }) {
  const id = objectOfPiece(pieceId);
  return (
    <One
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

interface OneProps extends BlockProps {
  readonly id: ObjectId;
  readonly heading?: string;
  readonly words: string;
  readonly suggestion: string;
  readonly pictures?: ReactNode;
}

/** One suggestion: its picture, its name, why, and what one can do with it. */
function One({ pieceId, view, id, heading, words, suggestion, pictures }: OneProps) {
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
      <p className="object-commands">
        {unplaced && show.may('hang') ? (
          <button type="button" aria-label={`bring it here: ${name}`} onClick={() => void placeOnStage([its], view)}>
            bring it here
          </button>
        ) : null}
        <button type="button" aria-label={`select both: ${name}`} onClick={() => choose([pieceId, its])}>
          select both
        </button>
        <Decline suggestion={suggestion} what={name} />
      </p>
    </section>
  );
}

function Decline({ suggestion, what }: { readonly suggestion: string; readonly what: string }) {
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
