/** Marks for readings, states and cautions. The word stands beside them, so they are hidden from listeners. */
import type { ReadingWord } from '@enfilade/colour/reading-thresholds';
import type { VignetteState } from '@enfilade/shared/judgements';

interface MarkProps {
  readonly sizePx?: number;
}

/** How a work reads: a field with a figure in it, more and more itself. */
export function ReadingMark({ word, sizePx = 14 }: MarkProps & { readonly word: ReadingWord }) {
  const inset = sizePx * 0.24;
  const side = sizePx - 2 * inset;
  const figure = { x: inset, y: inset, width: side, height: side, stroke: 'currentColor', strokeWidth: 1 };
  return (
    <svg className="mark" width={sizePx} height={sizePx} viewBox={`0 0 ${sizePx} ${sizePx}`} aria-hidden="true">
      <rect
        x={0.6}
        y={0.6}
        width={sizePx - 1.2}
        height={sizePx - 1.2}
        fill="none"
        stroke="currentColor"
        strokeWidth={1.1}
      />
      {word === 'lost' ? <rect {...figure} fill="none" strokeDasharray="1 1.6" /> : null}
      {word === 'weak' ? <rect {...figure} fill="none" /> : null}
      {word === 'holds' ? (
        <>
          <rect {...figure} fill="none" />
          <path d={`M${inset} ${inset + side}V${inset}L${inset + side} ${inset}z`} fill="currentColor" />
        </>
      ) : null}
      {word === 'carries' ? <rect {...figure} fill="currentColor" /> : null}
    </svg>
  );
}

/** Where a vignette stands, about the origin of a drawing. */
export function StateShapes({ state, sizePx }: { readonly state: VignetteState; readonly sizePx: number }) {
  const s = sizePx;
  const square = (
    <rect x={0.7} y={0.7} width={s - 1.4} height={s - 1.4} fill="none" stroke="currentColor" strokeWidth={1.2} />
  );
  switch (state) {
    case 'drafted':
      return square;
    case 'proposed': {
      // Whole dashes on every side, so that each corner is open: a square that is not there yet.
      const side = s - 1.4;
      return (
        <path
          d={`M.7 .7h${side}v${side}h${-side}z`}
          fill="none"
          stroke="currentColor"
          strokeWidth={1.2}
          strokeDasharray={`${side * 0.3} ${side * 0.2}`}
          strokeDashoffset={side * 0.15}
        />
      );
    }
    case 'signed off in part':
      return (
        <>
          {square}
          <path d={`M.7 .7H${s / 2}V${s - 0.7}H.7z`} fill="currentColor" />
        </>
      );
    case 'agreed':
      return <rect x={0.2} y={0.2} width={s - 0.4} height={s - 0.4} fill="currentColor" />;
    case 'changed since':
      return (
        <>
          <path d={`M.2 .2H${s * 0.5}V${s * 0.5}H${s - 0.2}V${s - 0.2}H.2z`} fill="currentColor" />
          <rect
            x={s * 0.62}
            y={-1}
            width={s * 0.38}
            height={s * 0.42}
            fill="none"
            stroke="currentColor"
            strokeWidth={1.2}
          />
        </>
      );
  }
}

export function StateMark({ state, sizePx = 12 }: MarkProps & { readonly state: VignetteState }) {
  const box = sizePx + 2;
  return (
    <svg className="mark" width={box} height={box} viewBox={`-1 -1 ${box} ${box}`} aria-hidden="true">
      <StateShapes state={state} sizePx={sizePx} />
    </svg>
  );
}

export function CautionMark({ sizePx = 15 }: MarkProps) {
  return (
    <svg className="mark" width={sizePx} height={sizePx} viewBox="0 0 16 16" aria-hidden="true">
      <path d="M8 1.2L15.2 14.6H.8z" fill="none" stroke="currentColor" strokeWidth={1.4} />
      <path d="M8 5.8V10.2M8 11.6V13" stroke="currentColor" strokeWidth={1.6} />
    </svg>
  );
}
