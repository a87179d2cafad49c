/** The review of what goes into the collection: headings, what waits, what stays out, every row, and pictures. */
import { AllRows } from './all-rows.tsx';
import { CollectionFoot } from './collection-foot.tsx';
import { CollectionPictures } from './collection-pictures.tsx';
import { HeadingsPart } from './headings-part.tsx';
import { RowsToLookAt } from './rows-to-look-at.tsx';
import { StaysOut } from './stays-out.tsx';
import type { Bringing } from './use-bringing.ts';
import type { Collecting } from './use-collecting.ts';

interface CollectionReviewProps {
  readonly bringing: Bringing;
  readonly collecting: Collecting;
}

export function CollectionReview({ bringing, collecting }: CollectionReviewProps) {
  const { reading: state } = bringing;
  const { collection, waiting, open, alike, answerAlike } = collecting;
  const reading = state.kind === 'read' ? state.reading : null;
  return (
    <>
      <div className={reading === null ? 'bi-parts bi-parts-pictures' : 'bi-parts'}>
        {reading === null || collection === null ? null : (
          <>
            <HeadingsPart reading={reading} mend={bringing.mend} />
            <div className="bi-rows">
              <StaysOut rows={collection.out} inAll={collection.outInAll} />
              <RowsToLookAt
                {...{ waiting, open, alike, answerAlike }}
                answers={bringing.answers}
                answer={bringing.answer}
              />
              {collection.waitingInAll > waiting.length ? (
                <p className="t1">
                  {(collection.waitingInAll - waiting.length).toLocaleString('en-GB')} more are not listed; they go in
                  as far as they can be told.
                </p>
              ) : null}
              <AllRows rows={reading.rows} count={collection.withNumber} bringing={bringing} written />
            </div>
          </>
        )}
        <CollectionPictures collecting={collecting} damaged={bringing.damaged} />
      </div>
      <CollectionFoot bringing={bringing} collecting={collecting} />
    </>
  );
}
