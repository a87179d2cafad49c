/** The pictures and the objects they found by their names; what found none, or whose piece is taken, is settled by hand. */
import { useId, useState } from 'react';
import { DamagedPictures } from './damaged-pictures.tsx';
import { PictureThumb } from './picture-thumb.tsx';
import type { Bringing, PicturePair } from './use-bringing.ts';
import { WhichObject } from './which-object.tsx';
import { WhichPiece } from './which-piece.tsx';

const SHOWN = 6;

export function PicturesPart({ bringing }: { readonly bringing: Bringing }) {
  const { pairs, damaged, pictures } = bringing;
  const id = useId();
  const [all, setAll] = useState(false);
  if (pictures.length === 0) {
    return (
      <section className="bi-pictures">
        <h2>Pictures</h2>
        <p className="t1">
          None chosen yet. They can come now or later: a picture finds its object by the number in the file’s name.
        </p>
      </section>
    );
  }
  const waiting = pairs.filter(({ choice }) => choice.target === null || choice.of === null);
  const found = pairs.filter((pair) => !waiting.includes(pair));
  return (
    <section className="bi-pictures">
      <h2>Pictures</h2>
      <p className="t1">
        {found.length} of {pictures.length} found {found.length === 1 ? 'its' : 'their'} object
        {waiting.length === 0 ? '' : '; those below wait for your word and stay out until then'}
      </p>
      <datalist id={`${id}-objects`}>
        {waiting.length === 0
          ? null
          : bringing.targets.map(({ key, number, title }) => (
              <option key={key} value={number}>
                {title}
              </option>
            ))}
      </datalist>
      <ul>
        {[...waiting, ...(all ? found : found.slice(0, SHOWN))].map((pair) => (
          <Picture key={pair.picture.id} pair={pair} bringing={bringing} list={`${id}-objects`} />
        ))}
      </ul>
      {found.length > SHOWN ? (
        <button type="button" onClick={() => setAll(!all)}>
          {all ? 'fewer' : `all ${found.length} that found theirs`}
        </button>
      ) : null}
      <DamagedPictures damaged={damaged}>
        {damaged.length === 1 ? 'Not taken. The rest goes in.' : `${damaged.length} not taken. The rest goes in.`}
      </DamagedPictures>
    </section>
  );
}

interface PictureProps {
  readonly pair: PicturePair;
  readonly bringing: Bringing;
  readonly list: string;
}

function Picture({ pair: { picture, choice }, bringing, list }: PictureProps) {
  const { target } = choice;
  return (
    <li>
      <PictureThumb file={picture.file} />
      <span className="bi-picture-words">
        {picture.file.name}
        {target === null ? (
          <WhichObject
            targets={bringing.targets}
            fileName={picture.file.name}
            list={list}
            choose={(key) => bringing.decide(picture.id, { target: key })}
          />
        ) : (
          <>
            <span className="bi-match">
              <b className="b">{target.number || target.title}</b>
              <button
                type="button"
                aria-label={`${picture.file.name} shows another object`}
                onClick={() => bringing.decide(picture.id, { target: null })}
              >
                another
              </button>
            </span>
            {target.count > 1 ? (
              <WhichPiece
                fileName={picture.file.name}
                count={target.count}
                of={choice.of}
                choose={(of) => bringing.decide(picture.id, { of })}
              />
            ) : choice.of === null ? (
              <span>
                Another picture shows it.{' '}
                <button type="button" onClick={() => bringing.decide(picture.id, { of: 'whole' })}>
                  take this one
                </button>
              </span>
            ) : null}
          </>
        )}
      </span>
    </li>
  );
}
