/** Along the foot: how far it is, and the one press that brings it all in. */
import { timeLeftText } from './sending.ts';
import type { Bringing } from './use-bringing.ts';

export function BringInFoot({ bringing }: { readonly bringing: Bringing }) {
  const { sending, rows, going: pictures, done } = bringing;
  if (sending !== null) {
    return (
      <footer className="bi-foot">
        <div>
          <h2>Reading the pictures</h2>
          <p className="t1">
            {sending.done} of {sending.of}; {timeLeftText(sending.secondsLeft)}
          </p>
        </div>
        <div>
          <Rule done={sending.done} of={sending.of} />
          <p className="t1">{sending.now}</p>
        </div>
        <p className="bi-commands">
          <button type="button" onClick={bringing.stop}>
            stop reading
          </button>
        </p>
      </footer>
    );
  }
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

const MARKS = 150;

/** A rule whose marks are inked as the work goes on. */
function Rule({ done, of }: { readonly done: number; readonly of: number }) {
  const marks = Math.min(MARKS, Math.max(1, of));
  const inked = Math.round((done / Math.max(1, of)) * marks);
  const step = 560 / marks;
  return (
    <svg
      className="bi-rule"
      viewBox="0 0 560 24"
      role="progressbar"
      aria-label="Pictures read"
      aria-valuemin={0}
      aria-valuemax={of}
      aria-valuenow={done}
    >
      {Array.from({ length: marks }, (_, index) => {
        const through = index < inked;
        return (
          <rect
            // biome-ignore lint/suspicious/noArrayIndexKey: a mark is its place on the rule
            key={index}
            x={index * step + 0.3}
            y={through ? 2 : 10}
            width={Math.max(1, step * 0.72)}
            height={through ? 20 : 12}
            fill={through ? '#111' : 'none'}
            stroke="#111"
            strokeWidth={through ? 0 : 0.6}
          />
        );
      })}
      <path d="M0 22.5H560" stroke="#111" strokeWidth={1.25} />
    </svg>
  );
}
