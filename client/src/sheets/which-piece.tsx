import { useId, useState } from 'react';
import type { PictureOf } from './picture-choices.ts';

interface WhichPieceProps {
  readonly fileName: string;
  readonly count: number;
  readonly of: PictureOf | null;
  readonly choose: (of: PictureOf) => void;
}

/** Which piece of a set a picture shows: its figure, or nothing for the whole set. */
export function WhichPiece({ fileName, count, of, choose }: WhichPieceProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState(false);
  const settle = (): void => {
    if (typed === null) return;
    const piece = typed.trim() === '' ? 'whole' : Number(typed);
    const fits = piece === 'whole' || (Number.isInteger(piece) && piece >= 1 && piece <= count);
    setWrong(!fits);
    if (!fits) return;
    setTyped(null);
    if (piece !== of) choose(piece);
  };
  return (
    <span className="bi-piece">
      <label htmlFor={id}>
        piece<span className="spoken"> that {fileName} shows, nothing for the whole set</span>
      </label>
      <input
        id={id}
        inputMode="numeric"
        autoComplete="off"
        placeholder={of === null ? 'which?' : 'all'}
        value={typed ?? (typeof of === 'number' ? String(of) : '')}
        aria-invalid={wrong}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') settle();
        }}
        onBlur={settle}
      />
      <span>of {count}</span>
      {of === null && !wrong ? <span>another picture shows it</span> : null}
      {wrong ? (
        <span className="b" role="alert">
          1 to {count}
        </span>
      ) : null}
    </span>
  );
}
