/** Bring in a checklist and pictures: read, reviewed beside the source, and written as one act. */
import { mayBringIn } from '@enfilade/shared/seats';
import { useEffect } from 'react';
import { useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { AllRows } from './all-rows.tsx';
import { BringInDone } from './bring-in-done.tsx';
import { BringInFoot } from './bring-in-foot.tsx';
import { BundlePart } from './bundle-part.tsx';
import { CollectionDone } from './collection-done.tsx';
import { CollectionReview } from './collection-review.tsx';
import { FileChoice } from './file-choice.tsx';
import { HeadingsPart } from './headings-part.tsx';
import { NamedPart } from './named-part.tsx';
import { PicturesPart } from './pictures-part.tsx';
import { reviewOf } from './review.ts';
import { RowsToLookAt } from './rows-to-look-at.tsx';
import { SheetChoice } from './sheet-choice.tsx';
import { useBringing } from './use-bringing.ts';
import { type Collecting, useCollecting } from './use-collecting.ts';
import { WhereItGoes } from './where-it-goes.tsx';
import { WorkingOn } from './working-on.tsx';
import './bring-in.css';

export function BringIn({ into }: { readonly into: 'collection' | null }) {
  const show = useShow();
  const { me } = show;
  // Asked from the collection; a word given here comes after.
  useEffect(() => {
    if (into === null) reviewOf(show).sayNothing();
    else reviewOf(show).say(into);
  }, [into, show]);
  if (!mayBringIn(me.person.role)) {
    return (
      <div className="bring-in">
        <h1>Bring in</h1>
        <p className="cap">
          The lead, the curator and the registrar bring in checklists and pictures. What they brought in stands unplaced
          along the foot of every wall.
        </p>
      </div>
    );
  }
  return <Bringing />;
}

function Bringing() {
  const bringing = useBringing();
  const collecting = useCollecting();
  const { reading: state, pictures, open, done } = bringing;
  const { into, collected } = collecting;
  if (bringing.bundle !== null) {
    return (
      <div className="bring-in">
        <h1>Bring in</h1>
        <BundlePart bringing={bringing} />
      </div>
    );
  }
  if (collected !== null) {
    return (
      <div className="bring-in">
        <CollectionDone collected={collected} collecting={collecting} bringing={bringing} />
      </div>
    );
  }
  if (done !== null) {
    return (
      <div className="bring-in">
        <BringInDone bringing={bringing} />
        {pictures.length === 0 ? null : (
          <>
            <div className="bi-parts bi-parts-pictures">
              <PicturesPart bringing={bringing} />
            </div>
            <BringInFoot bringing={bringing} />
          </>
        )}
      </div>
    );
  }
  const reading = state.kind === 'read' ? state.reading : null;
  if (state.kind === 'none' && pictures.length === 0 && bringing.unpacking === null) {
    return (
      <div className="bring-in">
        <h1>Bring in</h1>
        <Notes notes={bringing.notes} />
        <WorkingOn bringing={bringing} />
        <WhereItGoes into={into} choose={collecting.sayInto} />
        <FileChoice take={bringing.take} takeAddress={bringing.takeAddress} first into={into} />
        <p className="cap">
          No file, but a thing at hand? <a href={toAddress({ sheet: 'one-thing' })}>Bring in one thing</a>, from a phone
          too.
        </p>
      </div>
    );
  }
  return (
    <div className="bring-in">
      <header className="bi-head">
        <h1 aria-live="polite">
          {state.kind === 'reading'
            ? 'Reading the file'
            : into === 'collection'
              ? collectionHead(collecting)
              : reading === null
                ? `${bringing.going} of ${pictures.length} pictures found their object`
                : `${reading.rows.length - open} of ${reading.rows.length} understood`}
        </h1>
        <p className="t1">
          {state.kind === 'read' ? (
            <>
              {state.fileName}, {state.sheet === null ? '' : `sheet “${state.sheet}”, `}
              {state.about}, {state.reading.headings.length} headings.
              <br />
              {into === 'collection' ? collectionTail(collecting) : tailText(open)}
            </>
          ) : state.kind === 'reading' ? (
            state.fileName
          ) : null}
        </p>
        <FileChoice take={bringing.take} takeAddress={null} first={false} into={into} />
      </header>
      {state.kind === 'failed' ? (
        <p className="bi-failed" role="alert">
          <b className="b">{state.fileName}</b> was not read. {state.what}
        </p>
      ) : null}
      <WorkingOn bringing={bringing} />
      <WhereItGoes into={into} choose={collecting.sayInto} />
      <SheetChoice bringing={bringing} />
      <NamedPart bringing={bringing} />
      <Notes notes={bringing.notes} />
      {into === 'collection' ? (
        <CollectionReview bringing={bringing} collecting={collecting} />
      ) : (
        <>
          <div className={reading === null ? 'bi-parts bi-parts-pictures' : 'bi-parts'}>
            {reading === null ? null : (
              <>
                <HeadingsPart reading={reading} mend={bringing.mend} />
                <div className="bi-rows">
                  <RowsToLookAt {...bringing} />
                  <AllRows rows={bringing.rows} bringing={bringing} />
                </div>
              </>
            )}
            <PicturesPart bringing={bringing} />
          </div>
          <BringInFoot bringing={bringing} />
        </>
      )}
    </div>
  );
}

function Notes({ notes }: { readonly notes: readonly string[] }) {
  if (notes.length === 0) return null;
  return (
    <ul className="bi-notes">
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}

function collectionHead({ collection, goingPictures, pictures, matching }: Collecting): string {
  if (collection === null && matching) return 'Looking for their records';
  if (collection === null) return `${goingPictures} of ${pictures.length} pictures found their record`;
  const [going, count] = [collection.going, collection.count].map((n) => n.toLocaleString('en-GB'));
  return `${going} of ${count} ${collection.going === 1 ? 'goes' : 'go'} into the collection`;
}

function collectionTail({ open }: Collecting): string {
  return `${open === 0 ? 'Nothing waits for your word.' : tailText(open)} Sizes and counts are kept as written; what is doubtful of them waits until a thing goes to the checklist.`;
}

function tailText(open: number): string {
  if (open === 0) return 'Nothing waits for your word.';
  const [many, them] =
    open === 1 ? ['One below waits for a word and goes', 'it'] : [`${open} below wait for a word and go`, 'them'];
  return `${many} in too, with what is sure of ${them}; nothing is refused for its neighbour’s sake.`;
}

export default BringIn;
