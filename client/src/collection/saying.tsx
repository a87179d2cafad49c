/** Yes, maybe or no to a thing of the collection, live for all; what others say of it, by name; and onto the checklist. */
import { objectNumberKey } from '@enfilade/records/object-number';
import {
  type CollectionRecord,
  collectionWordsOf,
  heldOnChecklist,
  sayOfCollection,
  takeFromCollection,
} from '@enfilade/shared/collection';
import { wordOf } from '@enfilade/shared/proposals';
import { pieceIdOf } from '@enfilade/shared/schema';
import { COLLECTION_SAID, type CollectionWord } from '@enfilade/shared/talk';
import { useMemo } from 'react';
import { act } from '../cards/acting.ts';
import { choose } from '../selection.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { go } from '../view-address.ts';

export interface Standing {
  readonly words: ReadonlyMap<string, readonly CollectionWord[]>;
  readonly held: ReadonlyMap<string, string>;
}

/** What is said of every thing, and which are on the checklist: read once for a page of them. */
export function useStanding(): Standing {
  const { documents } = useShow();
  const words = useRoots('collectionWords');
  const objects = useRoots('objects');
  return {
    // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for the words
    words: useMemo(() => collectionWordsOf(documents), [documents, words]),
    // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for the objects
    held: useMemo(() => heldOnChecklist(documents), [documents, objects]),
  };
}

export function Saying({ record, standing }: { readonly record: CollectionRecord; readonly standing: Standing }) {
  const show = useShow();
  const { person } = show.me;
  const words = standing.words.get(objectNumberKey(record.number)) ?? [];
  const own = words.find(({ by }) => by === person.id)?.said ?? null;
  const others = words.filter(({ by }) => by !== person.id);
  return (
    <div className="co-saying">
      {show.may('talk') ? (
        <fieldset className="co-words">
          <legend className="spoken">Your word on {record.title}</legend>
          {COLLECTION_SAID.map((said) => (
            <button
              key={said}
              type="button"
              className={own === said ? 'cmd on' : 'cmd'}
              aria-pressed={own === said}
              onClick={() => {
                const next = own === said ? null : said;
                const told =
                  next === null ? `your word on ${record.title} is taken back` : `${next} to ${record.title}`;
                act(show, sayOfCollection(record.number, next, wordOf(person, new Date())), told);
              }}
            >
              {said}
            </button>
          ))}
        </fieldset>
      ) : null}
      {others.map(({ by, name, said }) => (
        <p key={by} className="t1 co-other">
          {name}: <b>{said}</b>
        </p>
      ))}
      <OnChecklist record={record} standing={standing} wanted={words.some(({ said }) => said === 'yes')} />
    </div>
  );
}

function OnChecklist(props: {
  readonly record: CollectionRecord;
  readonly standing: Standing;
  readonly wanted: boolean;
}) {
  const { record, standing, wanted } = props;
  const show = useShow();
  const id = standing.held.get(objectNumberKey(record.number));
  if (id !== undefined) {
    return (
      <button
        type="button"
        className="t1 co-held"
        onClick={() => {
          go({ sheet: 'layout' });
          choose([pieceIdOf(id, 1)]);
        }}
      >
        on the checklist
      </button>
    );
  }
  if (!wanted || !show.may('checklist')) return null;
  return (
    <button
      type="button"
      className="act co-take"
      aria-label={`Take to the checklist: ${record.title}`}
      onClick={() => takeToChecklist(show, [record])}
    >
      Take to the checklist
    </button>
  );
}

/** One act, one step of undo. */
export function takeToChecklist(show: Parameters<typeof act>[0], records: readonly CollectionRecord[]): void {
  const what = records.length === 1 ? (records[0]?.title ?? '') : `${records.length} things`;
  act(show, () => takeFromCollection(show.documents, records), `${what} on the checklist, unplaced`);
}
