/** Along the foot: how far it is, and the one press that brings it all in. */
import { ReadingFoot } from './reading-foot.tsx';
import type { Bringing } from './use-bringing.ts';

export function BringInFoot({ bringing }: { readonly bringing: Bringing }) {
  const { sending, rows, going: pictures, done } = bringing;
  if (sending !== null) return <ReadingFoot sending={sending} stop={bringing.stop} />;
  const parts = [
    ...(rows.length > 0 ? [`${rows.length} ${rows.length === 1 ? 'record' : 'records'}`] : []),
    ...(pictures > 0 ? [`${pictures} ${pictures === 1 ? 'picture' : 'pictures'}`] : []),
  ];
  return (
    <footer className="bi-foot">
      <div>
        <h2>
          {parts.length === 0 ? 'Nothing to bring in yet' : done === null ? 'Nothing is written yet' : 'More to go in'}
        </h2>
        <p className="t1">
          {parts.length === 0
            ? ''
            : `${parts.join(' and ')} ${rows.length + pictures === 1 ? 'goes' : 'go'} in as one act; one undo takes it back.`}
        </p>
      </div>
      <div />
      <p className="bi-commands">
        {done === null ? (
          <button type="button" className="act" onClick={bringing.begin}>
            Put all back
          </button>
        ) : null}
        <button
          type="button"
          className="act main"
          disabled={parts.length === 0}
          onClick={() => void bringing.bringIn()}
        >
          Bring in {rows.length > 0 ? rows.length : pictures}
        </button>
      </p>
    </footer>
  );
}
