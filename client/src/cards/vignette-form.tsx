/** A vignette in words: its name, its intent, and the work it is built around. */
import type { PieceId } from '@enfilade/shared/schema';
import { type FormEvent, useId, useState } from 'react';
import { useShow } from '../sync/hooks.ts';
import './vignette-form.css';

export interface VignetteWords {
  readonly name: string;
  readonly intent: string;
  readonly focal: PieceId | null;
}

interface FormProps extends VignetteWords {
  readonly pieces: readonly PieceId[];
  /** The word on the button that sets it. */
  readonly done: string;
  readonly take: (words: VignetteWords) => void;
  readonly leave: () => void;
}

export function VignetteForm({ name, intent, focal, pieces, done, take, leave }: FormProps) {
  const id = useId();
  const [words, setWords] = useState<VignetteWords>({ name, intent, focal });
  const [wrong, setWrong] = useState(false);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const trimmed = { ...words, name: words.name.trim(), intent: words.intent.trim() };
    setWrong(trimmed.name === '');
    if (trimmed.name !== '') take(trimmed);
  };
  return (
    <form className="vignette-form" onSubmit={submit}>
      <label htmlFor={`${id}-name`}>Name</label>
      <input
        id={`${id}-name`}
        value={words.name}
        autoComplete="off"
        // biome-ignore lint/a11y/noAutofocus: the form opens because the person asked to write in it
        autoFocus
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-wrong` : undefined}
        onChange={(event) => setWords({ ...words, name: event.target.value })}
      />
      {wrong ? (
        <p id={`${id}-wrong`} role="alert" className="b t1">
          It needs a name.
        </p>
      ) : null}
      <label htmlFor={`${id}-intent`}>Intent</label>
      <textarea
        id={`${id}-intent`}
        rows={3}
        value={words.intent}
        onChange={(event) => setWords({ ...words, intent: event.target.value })}
      />
      <FocalChoice
        label="Focal work"
        pieces={pieces}
        focal={words.focal}
        choose={(next) => setWords({ ...words, focal: next })}
        mayBeNone
      />
      <p className="vignette-form-commands">
        <button type="submit" className="act main">
          {done}
        </button>
        <button type="button" className="act" onClick={leave}>
          leave it
        </button>
      </p>
    </form>
  );
}

export function FocalChoice(props: {
  label: string;
  pieces: readonly PieceId[];
  focal: PieceId | null;
  choose: (pieceId: PieceId | null) => void;
  mayBeNone?: boolean;
}) {
  const { label, pieces, focal, choose, mayBeNone = false } = props;
  const { judgements } = useShow();
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        className="focal-choice"
        value={focal ?? ''}
        onChange={(event) => choose(event.target.value === '' ? null : event.target.value)}
      >
        {mayBeNone ? <option value="">none</option> : null}
        {pieces.map((pieceId) => (
          <option key={pieceId} value={pieceId}>
            {judgements.nameOf(pieceId)}
          </option>
        ))}
      </select>
    </>
  );
}
