/** Where a proposal stands, as a mark; the word beside it always says it, so it is hidden from listeners. */
import type { ProposalState } from './open-proposals.ts';

export function ProposalMark({ state, sizePx = 12 }: { readonly state: ProposalState; readonly sizePx?: number }) {
  const side = sizePx - 1.4;
  const square = { x: 0.7, y: 0.7, width: side, height: side, stroke: 'currentColor', strokeWidth: 1.2 };
  return (
    <svg className="mark" width={sizePx} height={sizePx} viewBox={`0 0 ${sizePx} ${sizePx}`} aria-hidden="true">
      {state === 'open' ? <rect {...square} fill="none" strokeDasharray="2.6 1.7" /> : null}
      {state === 'taken' ? <rect {...square} fill="currentColor" /> : null}
      {state === 'taken in part' ? (
        <>
          <rect {...square} fill="none" />
          <path d={`M.7 .7H${sizePx / 2}V${sizePx - 0.7}H.7z`} fill="currentColor" />
        </>
      ) : null}
      {state === 'declined' || state === 'withdrawn' ? (
        <>
          <rect {...square} fill="none" />
          <path d={`M.7 ${sizePx - 0.7}L${sizePx - 0.7} .7`} stroke="currentColor" strokeWidth={1.2} />
        </>
      ) : null}
    </svg>
  );
}

/** Two sheets, one over the other: two acts on one thing. */
export function ClashMark({ sizePx = 15 }: { readonly sizePx?: number }) {
  return (
    <svg className="mark" width={sizePx} height={sizePx} viewBox="0 0 16 16" aria-hidden="true">
      <path d="M1.5 1.5h8v8h-8zM6.5 6.5h8v8h-8z" fill="none" stroke="currentColor" strokeWidth={1.4} />
    </svg>
  );
}

/** Two boxes with too little between them. */
export function GapMark({ sizePx = 14 }: { readonly sizePx?: number }) {
  return (
    <svg className="mark" width={sizePx} height={sizePx} viewBox="0 0 14 14" aria-hidden="true">
      <path d="M1 2h4v10H1zM9 2h4v10H9zM5 7h4" fill="none" stroke="currentColor" strokeWidth={1.2} />
    </svg>
  );
}
