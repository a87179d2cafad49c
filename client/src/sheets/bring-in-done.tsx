/** What has gone in, what stayed out and why, and the way back. */
import { RefusedPictures } from './refused-pictures.tsx';
import type { Bringing } from './use-bringing.ts';

export function BringInDone({ bringing }: { readonly bringing: Bringing }) {
  const { done, putBack, begin, pairs } = bringing;
  if (done === null) return null;
  return (
    <>
      <h1 className="bi-big">{done.records === 1 ? '1 record is in' : `${done.records} records are in`}</h1>
      <p className="cap">
        {done.added} new, {done.updated} brought up to date, {done.pictures}{' '}
        {done.pictures === 1 ? 'picture' : 'pictures'}.
        {done.added > 0 ? ' What is new stands unplaced along the foot of every wall.' : ''} One undo takes all of it
        back.
      </p>
      {done.beyond > 0 ? (
        <p className="cap">
          {done.beyond} {done.beyond === 1 ? 'row stays' : 'rows stay'} out: a show holds 5,000 records.
        </p>
      ) : null}
      {pairs.length > 0 ? (
        <p className="cap">
          {pairs.length === 1
            ? 'One picture is left. Say which object it shows, and it goes in too.'
            : `${pairs.length} pictures are left. Say which object each shows, and they go in too.`}
        </p>
      ) : null}
      {done.told.map((sentence) => (
        <p key={sentence} className="cap">
          {sentence}
        </p>
      ))}
      <RefusedPictures refused={done.refused} />
      <p className="bi-commands">
        <button type="button" className="act main" onClick={begin}>
          Bring in more
        </button>
        <button type="button" className="act" onClick={putBack} disabled={!bringing.mayPutBack}>
          Put all back
        </button>
      </p>
    </>
  );
}
