/** The pictures and the objects they found by their names; what found none is matched by hand. */
import { useEffect, useId, useState } from 'react';
import type { Bringing } from './use-bringing.ts';

const SHOWN = 6;

export function PicturesPart({ bringing }: { readonly bringing: Bringing }) {
  const { files, choices } = bringing;
  const id = useId();
  const [all, setAll] = useState(false);
  if (files.length === 0) {
    return (
      <section className="bi-pictures">
        <h2>Pictures</h2>
        <p className="t1">
          None chosen yet. They can come now or later: a picture finds its object by the number in the file’s name.
        </p>
      </section>
    );
  }
  const pairs = choices.map((choice, index) => ({ choice, file: files[index] as File }));
  const matched = pairs.filter(({ choice }) => choice.target !== null);
  const unmatched = pairs.filter(({ choice }) => choice.target === null);
  return (
    <section className="bi-pictures">
      <h2>Pictures</h2>
      <p className="t1">
        {matched.length} of {files.length} found their object by the number in the file’s name
      </p>
      <datalist id={`${id}-objects`}>
        {unmatched.length === 0
          ? null
          : bringing.targets.map(({ key, number, title }) => (
              <option key={key} value={number}>
                {title}
              </option>
            ))}
      </datalist>
      <ul>
        {unmatched.map(({ choice, file }) => (
          <li key={file.name}>
            <Thumb file={file} />
            <span className="bi-picture-words">
              {file.name}
              <WhichObject bringing={bringing} fileName={choice.fileName} list={`${id}-objects`} />
            </span>
          </li>
        ))}
        {(all ? matched : matched.slice(0, SHOWN)).map(({ choice, file }) => (
          <li key={file.name}>
            <Thumb file={file} />
            <span className="bi-picture-words">
              {file.name}
              <b className="b">
                {choice.target?.number}
                {choice.order === null ? '' : `, piece ${choice.order}`}
              </b>
            </span>
          </li>
        ))}
      </ul>
      {matched.length > SHOWN ? (
        <button type="button" onClick={() => setAll(!all)}>
          {all ? 'fewer' : `all ${matched.length} that found theirs`}
        </button>
      ) : null}
    </section>
  );
}

interface WhichObjectProps {
  readonly bringing: Bringing;
  readonly fileName: string;
  readonly list: string;
}

function WhichObject({ bringing, fileName, list }: WhichObjectProps) {
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState(false);
  const settle = (text: string, last: boolean): void => {
    const sought = text.trim().toLowerCase();
    const exact = bringing.targets.find(({ number, title }) =>
      [number, title].some((one) => one.toLowerCase() === sought),
    );
    if (exact !== undefined) bringing.chooseTarget(fileName, exact.key);
    else setWrong(last && sought !== '');
  };
  return (
    <>
      <input
        className="bi-which"
        list={list}
        aria-label={`Which object is ${fileName}?`}
        placeholder="which object?"
        value={typed}
        aria-invalid={wrong}
        onChange={(event) => {
          setTyped(event.target.value);
          settle(event.target.value, false);
        }}
        onBlur={() => settle(typed, true)}
      />
      {wrong ? (
        <span className="b" role="alert">
          No object has this number or title.
        </span>
      ) : null}
    </>
  );
}

/** Decorative: the file is named beside it. A file that is no picture shows an empty field. */
function Thumb({ file }: { readonly file: File }) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(file);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  return (
    <span className="bi-thumb">
      {address === null ? null : (
        <img
          src={address}
          alt=""
          loading="lazy"
          decoding="async"
          onError={(event) => {
            event.currentTarget.hidden = true;
          }}
        />
      )}
    </span>
  );
}
