import type { ReactNode } from 'react';

interface TypedDraftProps {
  readonly children: ReactNode;
  /** What keeps it from being added. */
  readonly wrong: string | null;
  readonly addWords: string;
  readonly add: () => void;
  readonly leave?: () => void;
}

/** Fields of something being typed in, and the press that adds it. */
export function TypedDraft({ children, wrong, addWords, add, leave }: TypedDraftProps) {
  return (
    <>
      {children}
      {wrong === null ? null : (
        <p className="b t1" role="alert">
          {wrong}
        </p>
      )}
      <p className="measure-commands">
        <button type="button" className="act main" onClick={add}>
          {addWords}
        </button>
        {leave === undefined ? null : (
          <button type="button" onClick={leave}>
            leave it
          </button>
        )}
      </p>
    </>
  );
}
