/** Wall text and labels on a paint: what can be read, and how large it must be. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { sizesOfWords, wordsOnPaint } from '@enfilade/shared/words-on-walls';
import { useMemo } from 'react';
import { LengthField } from '../cards/length-field.tsx';
import { lengthText, usePreferences } from '../preferences.ts';
import { Store, useStore } from '../selection.ts';
import { DeskFold } from './desk-fold.tsx';
import { useDeskLight } from './desk-light.tsx';
import type { PaintShown } from './paint-shown.ts';

/** From how far words are to be read, mm. */
const readFrom = new Store(600);

const USE_WORDS = {
  none: 'not for words',
  large: 'large letters only',
  all: 'any usual size',
  enhanced: 'any usual size, for weaker eyes too',
} as const;

export function WordsBlock({ paint }: { readonly paint: PaintShown }) {
  const { look } = useDeskLight();
  const { unit } = usePreferences();
  const distance = useStore(readFrom);
  const words = useMemo(() => wordsOnPaint(paint.record), [paint.record]);
  const [best] = words.letters;
  if (best === undefined) return null;
  const sizes = sizesOfWords(distance, best.use);
  const seen = hexFromLabD65(look(paint));
  return (
    <DeskFold name="words" heading={`Words on ${paint.name}`} summary={`${best.name}: ${lower(best.words)}`}>
      <table className="words-on">
        <caption className="spoken">Letters and labels on {paint.name}</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">contrast</th>
            <th scope="col">LRV apart</th>
            <th scope="col">for</th>
          </tr>
        </thead>
        <tbody>
          {words.letters.map(({ name, lab, ratio, lrvPoints, use }) => (
            <tr key={name}>
              <th scope="row">
                <svg className="words-on-letters" width={40} height={24} aria-hidden="true">
                  <rect width={40} height={24} fill={seen} />
                  <text x={20} y={17} textAnchor="middle" style={{ fill: hexFromLabD65(lab) }}>
                    Aa
                  </text>
                </svg>{' '}
                {name}
              </th>
              <td>
                <b className="b">{ratio.toFixed(1)}</b> : 1
              </td>
              <td>{Math.round(lrvPoints)}</td>
              <td>{USE_WORDS[use]}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="t1">
        {words.label.words} Its card stands {Math.round(words.label.lrvPoints)} points of LRV off.
      </p>
      <div className="words-on-sizes">
        <LengthField
          label="Read from"
          mm={distance}
          leastMm={300}
          mostMm={20_000}
          take={(mm) => {
            readFrom.set(mm);
            return null;
          }}
        />
        {sizes.length === 0 ? (
          <p className="t1">No letters have the contrast: put the words on a panel of their own.</p>
        ) : (
          <ul className="t1" aria-label="Smallest letters">
            {sizes.map(({ kind, points, xHeightMm, by }) => (
              <li key={kind}>
                {kind}: <b className="b">{Math.ceil(points)} pt</b>, x-height {lengthText(xHeightMm, unit)} {unit}
                {by === 'standard' ? ', the least for such words' : by === 'contrast' ? ', for the contrast' : ''}
              </li>
            ))}
          </ul>
        )}
      </div>
      <p className="t1">
        LRV {Math.round(words.lrv)}, {words.lrvBasis}. Contrast as WCAG 2.2 has it, LRV as BS 8300-2; try them printed,
        on the wall, in its light.
      </p>
    </DeskFold>
  );
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
