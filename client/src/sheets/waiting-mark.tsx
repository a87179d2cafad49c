/** What kind of thing waits, as a mark; the word stands beside it. */
import type { WaitingKind } from '@enfilade/shared/waiting';
import type { ReactNode } from 'react';

const LINE = { fill: 'none', stroke: 'currentColor', strokeWidth: 1.3 } as const;

const SHAPES: Record<WaitingKind, ReactNode> = {
  clash: (
    <>
      <rect x={1.5} y={1.5} width={8} height={8} {...LINE} />
      <rect x={5.5} y={5.5} width={8} height={8} {...LINE} />
    </>
  ),
  loan: (
    <>
      <rect x={1.5} y={5.5} width={8} height={8} {...LINE} />
      <path d="M5.5 5.5V1.5H13.5V9.5H9.5" {...LINE} />
    </>
  ),
  'sign-off': (
    <>
      <rect x={2} y={2} width={11} height={11} {...LINE} />
      <path d="M2 2H7.5V13H2z" fill="currentColor" />
    </>
  ),
  question: (
    <>
      <path d="M1.5 2.5H13.5V10.5H7L4 13V10.5H1.5z" {...LINE} />
      <path d="M4.5 6.5H10.5" {...LINE} />
    </>
  ),
  proposal: <rect x={2} y={2} width={11} height={11} {...LINE} strokeDasharray="2.4 1.8" />,
  sample: (
    <>
      <rect x={2.5} y={1.5} width={10} height={12} {...LINE} />
      <path d="M2.5 1.5H12.5V9H2.5z" fill="currentColor" />
    </>
  ),
  size: <path d="M1 7.5H14M1 7.5L4 4.8M1 7.5L4 10.2M14 7.5L11 4.8M14 7.5L11 10.2" {...LINE} />,
  picture: (
    <>
      <rect x={1.5} y={2.5} width={12} height={10} {...LINE} />
      <path d="M1.5 12.5L13.5 2.5" {...LINE} />
    </>
  ),
  caution: (
    <>
      <path d="M7.5 1.8L14 13H1z" {...LINE} />
      <path d="M7.5 5.8V9.4M7.5 10.6V11.9" {...LINE} />
    </>
  ),
};

export function WaitingMark({ kind }: { readonly kind: WaitingKind }) {
  return (
    <svg className="mark" width={15} height={15} viewBox="0 0 15 15" aria-hidden="true">
      {SHAPES[kind]}
    </svg>
  );
}
