/** A figure on a card: read, or typed and set with Enter. What cannot be is said beside it, and nothing is lost. */
import { type KeyboardEvent, useEffect, useId, useState } from 'react';
import './typed-field.css';

export interface TypedFieldProps {
  readonly label: string;
  /** As it stands, without its unit; null: not known, or what `absent` says. */
  readonly text: string | null;
  readonly absent?: string;
  /** Takes what was typed; answers what is wrong with it, or null. */
  readonly take: (typed: string) => string | null;
  /** One step up or down, ten with shift; absent where stepping makes no sense. */
  readonly step?: (by: number) => void;
  /** On touch, with buttons for less and more beside it. */
  readonly stepper?: boolean;
  /** Words, not figures: a letter keyboard on touch. */
  readonly words?: boolean;
  /** Frozen: shown, not typed into. */
  readonly frozen?: boolean;
  readonly unit?: string;
  readonly hint?: string;
  /** Takes the focus when the card is asked for. */
  readonly first?: boolean;
}

export function TypedField(props: TypedFieldProps) {
  const { label, text, take, step, stepper = false, words = false, frozen = false, unit, hint, first = false } = props;
  const { absent = 'not known' } = props;
  const steps = stepper && step !== undefined && text !== null ? step : null;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  // What others set meanwhile shows as soon as nobody is typing here.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text is the occasion
  useEffect(() => setWrong(null), [text]);

  const settle = (): boolean => {
    if (typed === null || typed.trim() === (text ?? '')) {
      setTyped(null);
      setWrong(null);
      return true;
    }
    const issue = take(typed.trim());
    setWrong(issue);
    if (issue === null) setTyped(null);
    return issue === null;
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') {
      event.preventDefault();
      if (settle()) event.currentTarget.select();
    } else if (event.key === 'Escape') {
      event.stopPropagation();
      setTyped(null);
      setWrong(null);
    } else if ((event.key === 'ArrowUp' || event.key === 'ArrowDown') && step !== undefined && text !== null) {
      event.preventDefault();
      setTyped(null);
      step((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1));
    }
  };

  if (frozen) {
    return (
      <div className="typed-field">
        <span className="typed-label">{label}</span>
        <span className={`typed-value typed-frozen${text === null ? ' unk' : ''}`}>{text ?? absent}</span>
        {hint === undefined ? null : <span className="typed-hint">{hint}</span>}
      </div>
    );
  }
  return (
    <div className="typed-field">
      <label className="typed-label" htmlFor={id} id={`${id}-label`}>
        {label}
        {unit === undefined ? null : <span className="spoken">, {unit}</span>}
      </label>
      <span className="typed-entry">
        {steps === null ? null : (
          <button
            type="button"
            className="typed-step"
            aria-label="a step less"
            aria-describedby={`${id}-label`}
            onClick={() => steps(-1)}
          >
            −
          </button>
        )}
        <input
          id={id}
          className={`typed-value${text === null && typed === null ? ' unk' : ''}`}
          inputMode={words ? 'text' : 'decimal'}
          autoComplete="off"
          value={typed ?? text ?? ''}
          placeholder={absent}
          data-first-field={first ? '' : undefined}
          aria-invalid={wrong !== null}
          aria-describedby={wrong !== null ? `${id}-wrong` : hint !== undefined ? `${id}-hint` : undefined}
          onChange={(event) => setTyped(event.target.value)}
          onFocus={(event) => event.target.select()}
          onKeyDown={onKeyDown}
          onBlur={settle}
        />
        {steps === null ? null : (
          <button
            type="button"
            className="typed-step"
            aria-label="a step more"
            aria-describedby={`${id}-label`}
            onClick={() => steps(1)}
          >
            +
          </button>
        )}
      </span>
      {wrong === null ? null : (
        <span className="typed-wrong" id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      )}
      {hint === undefined || wrong !== null ? null : (
        <span className="typed-hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
    </div>
  );
}
