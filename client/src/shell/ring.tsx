/** A person's mark: initials in a ring whose edge is theirs. Told by shape and line, never by hue. */
import type { RingPattern } from '@enfilade/shared/presence';
import { initialsOf } from '@enfilade/shared/presence';

const INK = '#111';
const PAPER = '#f6f6f6';

interface RingProps {
  readonly name: string;
  readonly pattern: RingPattern;
  readonly radiusPx?: number;
  /** No connection to them: the initials go, the pattern stays. */
  readonly blank?: boolean;
}

/** The ring as an SVG of its own; its name is said by the words beside it, so it is hidden from listeners. */
export function Ring({ name, pattern, radiusPx = 10, blank = false }: RingProps) {
  const half = radiusPx + 3;
  return (
    <svg
      style={{ display: 'block', flex: 'none', overflow: 'visible' }}
      width={2 * half}
      height={2 * half}
      viewBox={`${-half} ${-half} ${2 * half} ${2 * half}`}
      aria-hidden="true"
    >
      <RingShapes name={name} pattern={pattern} radiusPx={radiusPx} blank={blank} />
    </svg>
  );
}

/** The same about the origin of a drawing. */
export function RingShapes({ name, pattern, radiusPx = 10, blank = false }: RingProps) {
  return (
    <>
      <circle r={radiusPx} fill={PAPER} />
      <RingEdge pattern={pattern} r={radiusPx} />
      {blank ? null : (
        <text
          y={radiusPx * 0.36}
          textAnchor="middle"
          style={{
            fontSize: radiusPx < 9 ? 8 : radiusPx * 0.95,
            fontWeight: 600,
            fill: INK,
            letterSpacing: '-0.02em',
          }}
        >
          {initialsOf(name)}
        </text>
      )}
    </>
  );
}

/** The pattern alone, about the origin of a drawing. */
export function RingEdge({ pattern, r }: { readonly pattern: RingPattern; readonly r: number }) {
  const small = r < 9;
  const width = small ? 1.1 : 1.35;
  const line = { fill: 'none', stroke: INK };
  const round = 2 * Math.PI * r;
  switch (pattern) {
    case 'plain':
      return <circle r={r} {...line} strokeWidth={width} />;
    case 'dashed':
      return <circle r={r} {...line} strokeWidth={width + 0.4} strokeDasharray={`${round * 0.062} ${round * 0.038}`} />;
    case 'dotted':
      return (
        <circle
          r={r}
          {...line}
          strokeWidth={small ? 1.7 : 2.2}
          strokeLinecap="round"
          strokeDasharray={`0.01 ${round / 18}`}
        />
      );
    case 'double':
      return (
        <>
          <circle r={r} {...line} strokeWidth={small ? 0.8 : 1} />
          <circle r={r - (small ? 2 : 2.6)} {...line} strokeWidth={small ? 0.8 : 1} />
        </>
      );
    case 'notched':
      return (
        <>
          <circle r={r} {...line} strokeWidth={width} />
          <path d={notchesOf(r, small ? 2 : 3)} {...line} strokeWidth={width + 0.5} />
        </>
      );
    case 'dash-dot':
      return <circle r={r} {...line} strokeWidth={width + 0.2} strokeDasharray="6 2.2 0.8 2.2" />;
    case 'half-heavy':
      return (
        <>
          <circle r={r} {...line} strokeWidth={0.9} />
          <path d={`M0 ${-r}A${r} ${r} 0 0 1 0 ${r}`} {...line} strokeWidth={3} />
        </>
      );
  }
}

function notchesOf(r: number, out: number): string {
  let path = '';
  for (let i = 0; i < 8; i++) {
    const angle = (i * Math.PI) / 4 + 0.39;
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    path += `M${(x * (r - 1)).toFixed(2)} ${(y * (r - 1)).toFixed(2)}`;
    path += `L${(x * (r + out)).toFixed(2)} ${(y * (r + out)).toFixed(2)}`;
  }
  return path;
}
