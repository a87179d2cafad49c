/** What goes with one thing: the set it is of or would join, the focal work that would carry it, its companion. */
import { foundThing } from '@enfilade/shared/likeness-pools';
import { objectOfPiece, type PieceId } from '@enfilade/shared/schema';
import { declinedSuggestions, suggestionKey } from '@enfilade/shared/suggestions';
import { capital } from '@enfilade/shared/surface-names';
import { choose } from '../selection.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress, type View } from '../view-address.ts';
import type { Beside } from '../workers/likeness-task.ts';
import { BesideOne, Decline, EchoOne } from './beside-one.tsx';
import { wordsOfSet } from './set-words.ts';
import { ThingPicture } from './thing-picture.tsx';
import { LOOKS } from './wish.ts';

/** Of its set so many are shown. */
const SHOWN = 9;

interface GoesProps {
  readonly pieceId: PieceId;
  readonly view: View;
  readonly beside: Beside;
}

export function GoesWith({ pieceId, view, beside }: GoesProps) {
  const { documents } = useShow();
  useRoots('declinedSuggestions', 'places', 'memberOf', 'vignettes');
  const { goes, set } = beside;
  const id = objectOfPiece(pieceId);
  const away = declinedSuggestions(documents);
  const members = membersOf(set);
  const others = members.filter((other) => other !== id);
  const inSet = set !== null && others.length > 0 && !away.has(suggestionKey('set', members));
  const focal = goes.focal !== undefined && !away.has(suggestionKey('focal', [id, goes.focal.id])) ? goes.focal : null;
  const companion =
    goes.companion !== undefined && !away.has(suggestionKey('echo', [id, goes.companion.echo.id]))
      ? goes.companion
      : null;
  return (
    <div className="beside">
      {inSet ? <ItsSet pieceId={pieceId} set={set} others={others} words={goes.set?.words ?? ''} /> : null}
      {focal === null ? null : (
        <BesideOne
          pieceId={pieceId}
          view={view}
          id={focal.id}
          heading="A focal work to carry it"
          words={`${capital(focal.words)}.`}
          suggestion={suggestionKey('focal', [id, focal.id])}
        />
      )}
      {companion === null ? null : (
        <EchoOne pieceId={pieceId} view={view} echo={companion.echo} heading="A companion of its size" />
      )}
      {inSet && focal !== null && companion !== null ? null : <p className="t1 q">{wanting(goes.words)}</p>}
      <p className="t1">
        <a href={toAddress({ sheet: 'likenesses' })}>all sets of the checklist</a>
      </p>
    </div>
  );
}

function membersOf(set: Beside['set']): readonly string[] {
  if (set === null) return [];
  return set.kind === 'found' ? set.likeness.members : set.members;
}

/** ', by shape'; nothing where all looks were looked by. */
function byLooks(looks: readonly string[]): string {
  return looks.length === LOOKS.length ? '' : `, by ${looks.join(' and ')} alone`;
}

interface SetProps {
  readonly pieceId: PieceId;
  readonly set: NonNullable<Beside['set']>;
  readonly others: readonly string[];
  readonly words: string;
}

function ItsSet({ pieceId, set, others, words }: SetProps) {
  const { judgements } = useShow();
  const pieces = [pieceId, ...others.flatMap((other) => foundThing(judgements, other).free)];
  const members = membersOf(set);
  const found = set.kind === 'found' ? wordsOfSet(set.likeness) : null;
  const isOne = members.includes(objectOfPiece(pieceId));
  const heading =
    set.kind === 'type'
      ? 'Others of its type'
      : `${isOne ? 'A set it is one of' : 'A set it would join'}${byLooks(set.looks)}`;
  return (
    <section aria-label={heading}>
      <h4 className="t1 q">{heading}</h4>
      {found === null ? (
        <p className="t1">
          It {words}. Of one type, as the checklist says: no discovery. It is in none of the sets that were found, by
          all looks or by one.
        </p>
      ) : (
        <>
          <p>{found.reason}</p>
          <p className="t1">
            It {words}. {found.standing}
          </p>
        </>
      )}
      <p className="beside-set">
        {others.slice(0, SHOWN).map((other) => (
          <ThingPicture key={other} id={other} boxPx={26} />
        ))}
        {others.length > SHOWN ? <span className="t1 q">and {others.length - SHOWN}</span> : null}
      </p>
      <p className="object-commands">
        {pieces.length > 1 ? (
          <button type="button" onClick={() => choose(pieces)}>
            select it with the {pieces.length - 1} that are free
          </button>
        ) : null}
        <Decline suggestion={suggestionKey('set', members)} what="this set" />
      </p>
    </section>
  );
}

/** What the engine says is wanting, as a sentence. */
function wanting(words: string): string {
  return words.startsWith('a set,') ? 'The rest was declined.' : `${capital(words)}.`;
}
