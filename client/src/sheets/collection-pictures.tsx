/** Pictures and the records of the collection they show, by the numbers in their names or by hand. */
import { useId, useState } from 'react';
import { DamagedPictures } from './damaged-pictures.tsx';
import { PictureThumb } from './picture-thumb.tsx';
import type { Bringing } from './use-bringing.ts';
import type { Collecting, NumberedPicture } from './use-collecting.ts';

const SHOWN = 6;

interface CollectionPicturesProps {
  readonly collecting: Collecting;
  readonly damaged: Bringing['damaged'];
}

export function CollectionPictures({ collecting, damaged }: CollectionPicturesProps) {
  const { pictures, matching } = collecting;
  const [more, setMore] = useState(false);
  const waiting = pictures.filter(({ number, taken }) => number === null || taken);
  const found = pictures.filter((one) => !waiting.includes(one));
  const [seenWaiting, seenFound] = more ? [waiting, found] : [waiting.slice(0, 40), found.slice(0, SHOWN)];
  const hidden = pictures.length - seenWaiting.length - seenFound.length;
  if (pictures.length + damaged.length === 0) {
    return (
      <section className="bi-pictures">
        <h2>Pictures</h2>
        <p className="t1">
          None chosen yet. They can come now or later: a picture finds its record by the number in the file’s name, in
          this file or in the collection as it is.
        </p>
      </section>
    );
  }
  return (
    <section className="bi-pictures">
      <h2>Pictures</h2>
      <p className="t1" role="status">
        {matching
          ? 'Looking for their numbers in the collection…'
          : `${found.length} of ${pictures.length} found ${found.length === 1 ? 'its' : 'their'} record${
              waiting.length === 0 ? '' : '; those below wait for your word and stay out until then'
            }`}
      </p>
      <ul>
        {[...seenWaiting, ...seenFound].map((one) => (
          <Picture key={one.picture.id} one={one} collecting={collecting} />
        ))}
      </ul>
      {hidden > 0 || more ? (
        <button type="button" onClick={() => setMore(!more)}>
          {more ? 'fewer' : `all ${pictures.length}`}
        </button>
      ) : null}
      <DamagedPictures damaged={damaged}>
        {damaged.length === 1 ? 'One is' : `${damaged.length} are`} not taken. The rest goes in.
      </DamagedPictures>
    </section>
  );
}

function Picture({ one, collecting }: { readonly one: NumberedPicture; readonly collecting: Collecting }) {
  const { picture, number, taken } = one;
  const { name } = picture.file;
  return (
    <li>
      <PictureThumb file={picture.file} />
      <span className="bi-picture-words">
        {name}
        {number === null && collecting.matching ? null : number === null ? (
          <WhichNumber name={name} settle={(typed) => collecting.numberFor(picture.id, typed)} />
        ) : (
          <span className="bi-match">
            <b className="b">{number}</b>
            <button
              type="button"
              aria-label={`${name} shows another record`}
              onClick={() => collecting.notThis(picture.id)}
            >
              another
            </button>
          </span>
        )}
        {taken ? <span>Another picture shows it; this one stays out.</span> : null}
      </span>
    </li>
  );
}

function WhichNumber({
  name,
  settle,
}: {
  readonly name: string;
  readonly settle: (typed: string) => Promise<boolean>;
}) {
  const id = useId();
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState(false);
  const ask = async (): Promise<void> => {
    if (typed.trim() !== '' && !(await settle(typed.trim()))) setWrong(true);
  };
  return (
    <>
      <input
        className="bi-which"
        aria-label={`Which number is ${name}?`}
        placeholder="which number?"
        autoComplete="off"
        maxLength={200}
        value={typed}
        aria-invalid={wrong}
        aria-describedby={wrong ? id : undefined}
        onChange={(event) => {
          setTyped(event.target.value);
          setWrong(false);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') void ask();
        }}
        onBlur={() => void ask()}
      />
      {wrong ? (
        <span className="b" id={id} role="alert">
          No record of the file or the collection has this number.
        </span>
      ) : null}
    </>
  );
}
