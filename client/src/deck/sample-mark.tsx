/** How far a sample has come, as a mark; the word stands beside it. */
import type { SampleState } from '@enfilade/shared/samples';

const LINE = { fill: 'none', stroke: 'currentColor', strokeWidth: 1.3 } as const;

export function SampleMark({ state }: { readonly state: SampleState | 'none' }) {
  return (
    <svg className="mark" width={15} height={15} viewBox="0 0 15 15" aria-hidden="true">
      <rect
        x={2.5}
        y={1.5}
        width={10}
        height={12}
        {...LINE}
        {...(state === 'none'
          ? { strokeDasharray: '1.6 1.8' }
          : state === 'to post'
            ? { strokeDasharray: '3 1.6' }
            : {})}
      />
      {state === 'seen' ? <path d="M2.5 7.5H12.5V13.5H2.5z" fill="currentColor" /> : null}
      {state === 'approved' ? <path d="M2.5 1.5H12.5V13.5H2.5z" fill="currentColor" /> : null}
    </svg>
  );
}
