/** A rule whose marks are inked as the work goes on. */
const MARKS = 150;

interface InkedRuleProps {
  /** What is counted, for those who hear it. */
  readonly label: string;
  readonly done: number;
  readonly of: number;
}

export function InkedRule({ label, done, of }: InkedRuleProps) {
  const marks = Math.min(MARKS, Math.max(1, of));
  const inked = Math.round((done / Math.max(1, of)) * marks);
  const step = 560 / marks;
  return (
    <svg
      className="bi-rule"
      viewBox="0 0 560 24"
      role="progressbar"
      aria-label={label}
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
