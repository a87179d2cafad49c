/** A printed sheet drawn on screen: the same marks, in millimetres of paper, that the server makes the PDF of. */
import { A3, type Sheet, type SheetMark, type SheetText } from '@enfilade/shared/sheet';

const FACES: Record<SheetText['face'], React.CSSProperties> = {
  serif: { fontFamily: 'var(--serif)' },
  sans: { fontFamily: 'var(--sans)' },
  'sans bold': { fontFamily: 'var(--sans)', fontWeight: 600 },
};

export function SheetSvg({ sheet }: { readonly sheet: Sheet }) {
  return (
    <svg
      className="sheet-svg"
      viewBox={`0 0 ${A3.widthMm} ${A3.heightMm}`}
      role="img"
      aria-label={`${sheet.title}. The same figures follow as a table.`}
    >
      <rect width={A3.widthMm} height={A3.heightMm} fill="#fff" />
      {sheet.marks.map((mark, index) => (
        // The marks of a sheet have no identity but their order.
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <Mark key={index} mark={mark} />
      ))}
    </svg>
  );
}

function Mark({ mark }: { readonly mark: SheetMark }) {
  switch (mark.kind) {
    case 'text':
      return (
        <text
          x={mark.xMm}
          y={mark.yMm}
          textAnchor={mark.anchor ?? 'start'}
          style={{ ...FACES[mark.face], fontSize: `${mark.sizeMm}px`, fill: mark.ink === 'white' ? '#fff' : '#000' }}
        >
          {mark.text}
        </text>
      );
    case 'line':
      return (
        <path
          d={`M${mark.x1} ${mark.y1}L${mark.x2} ${mark.y2}`}
          fill="none"
          stroke="#000"
          strokeWidth={mark.weightMm}
          strokeDasharray={mark.dash?.join(' ')}
        />
      );
    case 'box':
      return (
        <rect
          x={mark.xMm}
          y={mark.yMm}
          width={mark.widthMm}
          height={mark.heightMm}
          fill={mark.fill === 'ink' ? '#000' : mark.fill === 'paper' ? '#fff' : 'none'}
          stroke="#000"
          strokeWidth={mark.weightMm}
          strokeDasharray={mark.dash?.join(' ')}
          transform={
            mark.turnDegrees
              ? `rotate(${mark.turnDegrees} ${mark.xMm + mark.widthMm / 2} ${mark.yMm + mark.heightMm / 2})`
              : undefined
          }
        />
      );
    case 'ring':
      return (
        <circle cx={mark.xMm} cy={mark.yMm} r={mark.radiusMm} fill="#fff" stroke="#000" strokeWidth={mark.weightMm} />
      );
  }
}
