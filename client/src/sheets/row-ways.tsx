/** The ways to settle one cell: those offered, and what a person types in its place. */
import { typedAnswer, typedFieldOf } from '@enfilade/shared/checklist-answers';
import type { RowAnswer, RowWait } from '@enfilade/shared/checklist-reading';
import { useState } from 'react';

interface RowWaysProps {
  /** What waits in the cell. */
  readonly waits: readonly RowWait[];
  readonly given: RowAnswer | undefined;
  readonly answer: (key: string, given: RowAnswer) => void;
}

const HINTS = {
  size: ['or its size', '61 × 81.4 cm', 'Height, width and a unit are needed.'],
  weight: ['or its weight', '12 kg', 'A figure and a unit are needed.'],
  count: ['or its count', '12', 'A whole number of pieces is needed.'],
  number: ['or its number', '1931.14.3', 'A number is needed.'],
} as const;

export function RowWays({ waits, given, answer }: RowWaysProps) {
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState(false);
  const [first] = waits;
  if (first === undefined) return null;
  const { issue, row } = first;
  // One way to leave it so, however much is said of the cell.
  const ways = waits.flatMap((wait) => wait.answers.map((way) => ({ key: wait.key, way })));
  const offered = ways.filter(({ way }, at) => ways.findIndex((other) => other.way.label === way.label) === at);
  const field = typedFieldOf(issue);
  const settle = (): void => {
    const read = typed.trim() === '' ? null : typedAnswer(issue, typed);
    setWrong(read === null && typed.trim() !== '');
    if (read === null) return;
    setTyped('');
    answer(first.key, read);
  };
  return (
    <fieldset className="bi-ways">
      <legend className="spoken">
        Row {row}, {issue.heading}: choose
      </legend>
      {offered.map(({ key, way }) => (
        <button
          key={way.label}
          type="button"
          className={given?.label === way.label ? 'cmd on' : 'cmd'}
          aria-pressed={given?.label === way.label}
          onClick={() => answer(key, way)}
        >
          {way.label}
        </button>
      ))}
      {field === null ? null : (
        <input
          className="bi-typed"
          autoComplete="off"
          aria-label={`Row ${row}, ${issue.heading || field}: ${HINTS[field][0]}`}
          placeholder={`${HINTS[field][0]}, ${HINTS[field][1]}`}
          value={typed}
          aria-invalid={wrong}
          onChange={(event) => {
            setTyped(event.target.value);
            setWrong(false);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') settle();
          }}
          onBlur={settle}
        />
      )}
      {wrong && field !== null ? (
        <span className="b" role="alert">
          {HINTS[field][2]}
        </span>
      ) : null}
    </fieldset>
  );
}
