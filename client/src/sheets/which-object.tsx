import { useId, useState } from 'react';
import type { PictureTarget } from './picture-choices.ts';

interface WhichObjectProps {
  readonly targets: readonly PictureTarget[];
  readonly fileName: string;
  /** Id of the datalist of all targets. */
  readonly list: string;
  readonly choose: (key: string) => void;
}

/** A picture's object, typed by number or title, or taken from the list. */
export function WhichObject({ targets, fileName, list, choose }: WhichObjectProps) {
  const id = useId();
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState(false);
  const settle = (): void => {
    const sought = typed.trim().toLowerCase();
    const found = targets.find(({ number, title }) => [number, title].some((one) => one.toLowerCase() === sought));
    if (sought !== '' && found !== undefined) choose(found.key);
    else setWrong(sought !== '');
  };
  return (
    <>
      <input
        className="bi-which"
        list={list}
        aria-label={`Which object is ${fileName}?`}
        placeholder="which object?"
        autoComplete="off"
        value={typed}
        aria-invalid={wrong}
        aria-describedby={wrong ? id : undefined}
        onChange={(event) => {
          setTyped(event.target.value);
          setWrong(false);
        }}
        onInput={({ nativeEvent, currentTarget }) => {
          // Taken from the list, it is whole at once; typed, it is settled by Enter or by going on.
          const whole = !(nativeEvent instanceof InputEvent) || nativeEvent.inputType === 'insertReplacementText';
          const found = whole ? targets.find(({ number }) => number === currentTarget.value) : undefined;
          if (found !== undefined) choose(found.key);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') settle();
        }}
        onBlur={settle}
      />
      {wrong ? (
        <span className="b" id={id} role="alert">
          No object has this number or title.
        </span>
      ) : null}
    </>
  );
}
