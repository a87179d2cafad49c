/** Words and choices on a sheet, in the manner of the typed figures beside them. */
import { type KeyboardEvent, useEffect, useId, useState } from 'react';
import './sheet-fields.css';

interface TextFieldProps {
  readonly label: string;
  readonly text: string;
  /** Takes what was typed; answers what is wrong with it, or null. */
  readonly take: (typed: string) => string | null;
  readonly frozen?: boolean;
  /** Words to choose from while typing. */
  readonly offers?: readonly string[];
}

export function TextField({ label, text, take, frozen = false, offers }: TextFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text is the occasion
  useEffect(() => setWrong(null), [text]);
  const settle = (): void => {
    const issue = typed === null || typed.trim() === text ? null : take(typed.trim());
    setWrong(issue);
    if (issue === null) setTyped(null);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') {
      event.preventDefault();
      settle();
    } else if (event.key === 'Escape' && typed !== null) {
      event.stopPropagation();
      setTyped(null);
      setWrong(null);
    }
  };
  if (frozen) {
    return (
      <div className="sheet-field">
        <span>{label}</span>
        <span className="sheet-words">{text}</span>
      </div>
    );
  }
  return (
    <div className="sheet-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className="sheet-words"
        autoComplete="off"
        value={typed ?? text}
        list={offers === undefined ? undefined : `${id}-offers`}
        aria-invalid={wrong !== null}
        aria-describedby={wrong === null ? undefined : `${id}-wrong`}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={onKeyDown}
        onBlur={settle}
      />
      {offers === undefined ? null : (
        <datalist id={`${id}-offers`}>
          {offers.map((offer) => (
            <option key={offer} value={offer} />
          ))}
        </datalist>
      )}
      {wrong === null ? null : (
        <span className="typed-wrong" id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      )}
    </div>
  );
}

interface ChoiceFieldProps {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly (readonly [value: string, words: string])[];
  readonly take: (value: string) => string | null;
  readonly frozen?: boolean;
}

export function ChoiceField({ label, value, choices, take, frozen = false }: ChoiceFieldProps) {
  const id = useId();
  const [wrong, setWrong] = useState<string | null>(null);
  if (frozen) {
    return (
      <div className="sheet-field">
        <span>{label}</span>
        <span className="sheet-words">{choices.find(([name]) => name === value)?.[1] ?? value}</span>
      </div>
    );
  }
  return (
    <div className="sheet-field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        className="sheet-words"
        value={value}
        aria-invalid={wrong !== null}
        aria-describedby={wrong === null ? undefined : `${id}-wrong`}
        onChange={(event) => setWrong(take(event.target.value))}
      >
        {choices.map(([name, words]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </select>
      {wrong === null ? null : (
        <span className="typed-wrong" id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      )}
    </div>
  );
}
