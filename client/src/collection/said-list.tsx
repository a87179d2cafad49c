/** What the team said of the collection, in one list: what is wanted first; a yes goes to the checklist with one press. */
import { objectNumberKey } from '@enfilade/records/object-number';
import type { CollectionRecord } from '@enfilade/shared/collection';
import { COLLECTION_SAID, type CollectionSaid, type CollectionWord } from '@enfilade/shared/talk';
import { useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { useRecords } from './asking.ts';
import { PhotographRecord } from './photograph-record.tsx';
import { Saying, type Standing, takeToChecklist, useStanding } from './saying.tsx';
import { shownText, ThingPicture } from './thing.tsx';
import { Trouble } from './trouble.tsx';

const HEADS: Readonly<Record<CollectionSaid, string>> = {
  yes: 'Somebody says yes',
  maybe: 'Maybe',
  no: 'No',
};

/** A thing stands where its best word puts it: one yes is enough to be looked at. */
export function standingOf(words: readonly CollectionWord[]): CollectionSaid {
  return COLLECTION_SAID.find((said) => words.some((word) => word.said === said)) ?? 'no';
}

export function SaidList() {
  const show = useShow();
  const standing = useStanding();
  const numbers = [...standing.words.values()].flatMap(([first]) => (first === undefined ? [] : [first.number]));
  const told = useRecords(numbers);
  const records = told.answer ?? [];
  const groups = COLLECTION_SAID.map((said) => ({
    said,
    records: records.filter((r) => groupOf(r, standing) === said),
  }));
  const toTake = groups[0]?.records.filter(({ number }) => !standing.held.has(objectNumberKey(number))) ?? [];
  if (numbers.length === 0) {
    return (
      <p className="cap co-empty">
        Nobody has said anything yet. <a href={toAddress({ sheet: 'collection', part: 'browse' })}>Browse</a> the
        collection and say yes, maybe or no to what you see; everybody sees it here at once.
      </p>
    );
  }
  return (
    <div className="co-list">
      <Trouble told={told} />
      {show.may('checklist') && toTake.length > 1 ? (
        <p>
          <button type="button" className="act main" onClick={() => takeToChecklist(show, toTake)}>
            Take all {toTake.length} to the checklist
          </button>
        </p>
      ) : null}
      {groups.map((group) =>
        group.records.length === 0 ? null : (
          <section key={group.said} className="co-group" aria-label={HEADS[group.said]}>
            <h2>
              {HEADS[group.said]} <span className="co-number">{group.records.length}</span>
            </h2>
            <ul>
              {group.records.map((record) => (
                <SaidRow key={record.number} record={record} standing={standing} />
              ))}
            </ul>
          </section>
        ),
      )}
    </div>
  );
}

function groupOf({ number }: CollectionRecord, { words }: Standing): CollectionSaid {
  return standingOf(words.get(objectNumberKey(number)) ?? []);
}

interface SaidRowProps {
  readonly record: CollectionRecord;
  readonly standing: Standing;
  /** Where it can be photographed from here: what then is to be done. */
  readonly photographed?: () => void;
}

export function SaidRow({ record, standing, photographed }: SaidRowProps) {
  return (
    <li className="co-row">
      <ThingPicture record={record} longestPx={64} />
      <div>
        <h3 className="co-title">{record.title}</h3>
        <p className="t1 co-facts">
          {[record.number, record.date, record.medium, record.dimensions].filter(Boolean).join('; ')};{' '}
          {shownText(record.shown)}
        </p>
      </div>
      <div>
        <Saying record={record} standing={standing} />
        {photographed === undefined ? null : <PhotographRecord record={record} done={photographed} />}
      </div>
    </li>
  );
}
