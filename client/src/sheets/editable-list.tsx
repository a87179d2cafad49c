/** A list whose rows open to be corrected or taken away, and to which one more can be typed in. */
import { type ReactNode, useState } from 'react';
import { TypedDraft } from './typed-draft.tsx';

/** How one kind of row is told, typed and written. `T`: as stored; `D`: while it is typed in. */
export interface RowKind<T extends D, D extends object> {
  readonly heading: string;
  readonly summaryOf: (row: T) => ReactNode;
  readonly fieldsOf: (row: D, set: (fields: Partial<T>) => string | null, frozen: boolean) => ReactNode;
  /** Each answers what is wrong, or null once it is written. */
  readonly correct: (id: string, row: T, fields: Partial<T>) => string | null;
  readonly add: (draft: D) => string | null;
  readonly takeAway: (id: string, row: T) => void;
  readonly addWordsOf: (draft: D) => string;
  /** The presses that begin one. */
  readonly begins: readonly { readonly words: string; readonly draft: () => D }[];
}

interface EditableListProps<T extends D, D extends object> {
  readonly rows: readonly (readonly [id: string, row: T])[];
  readonly kind: RowKind<T, D>;
  readonly frozen: boolean;
}

export function EditableList<T extends D, D extends object>({ rows, kind, frozen }: EditableListProps<T, D>) {
  const [draft, setDraft] = useState<D | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const leave = (): void => {
    setDraft(null);
    setWrong(null);
  };
  const add = (): void => {
    if (draft === null) return;
    const trouble = kind.add(draft);
    if (trouble === null) leave();
    else setWrong(trouble);
  };
  const type = (fields: Partial<T>): null => {
    setDraft((now) => (now === null ? null : { ...now, ...fields }));
    setWrong(null);
    return null;
  };
  return (
    <section className="card">
      <h2>{kind.heading}</h2>
      {rows.length === 0 ? <p className="cap">None yet.</p> : null}
      {rows.map(([id, row]) => (
        <details key={id} className="measure-part">
          <summary>{kind.summaryOf(row)}</summary>
          {kind.fieldsOf(row, (fields) => kind.correct(id, row, fields), frozen)}
          {frozen ? null : (
            <button type="button" onClick={() => kind.takeAway(id, row)}>
              take it away
            </button>
          )}
        </details>
      ))}
      {draft === null ? null : (
        <div className="measure-draft">
          <TypedDraft wrong={wrong} addWords={kind.addWordsOf(draft)} add={add} leave={leave}>
            {kind.fieldsOf(draft, type, false)}
          </TypedDraft>
        </div>
      )}
      {frozen || draft !== null ? null : (
        <p className="measure-commands">
          {kind.begins.map(({ words, draft: begun }) => (
            <button key={words} type="button" onClick={() => setDraft(begun())}>
              {words}
            </button>
          ))}
        </p>
      )}
    </section>
  );
}
