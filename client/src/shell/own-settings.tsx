/** What a person sets for their own screen: units of figures, lightness of the surround, with whose eyes. */
import { prefer, type Surround, type Unit, usePreferences } from '../preferences.ts';
import { SeenByChoice } from './seen-by-choice.tsx';

const UNITS: readonly (readonly [Unit, string])[] = [
  ['cm', 'centimetres'],
  ['in', 'inches and sixteenths'],
];
const SURROUNDS: readonly Surround[] = [50, 65, 80, 92];

export function OwnSettings() {
  const { unit, surround } = usePreferences();
  return (
    <div className="own-settings">
      <fieldset>
        <legend>Figures in</legend>
        {UNITS.map(([value, name]) => (
          <button
            key={value}
            type="button"
            className={`cmd${value === unit ? ' on' : ''}`}
            aria-pressed={value === unit}
            aria-label={`${value}, ${name}`}
            onClick={() => prefer({ unit: value })}
          >
            {value}
          </button>
        ))}
      </fieldset>
      <fieldset>
        <legend>Surround</legend>
        {SURROUNDS.map((value) => (
          <button
            key={value}
            type="button"
            className={`cmd${value === surround ? ' on' : ''}`}
            aria-pressed={value === surround}
            aria-label={`${value}, lightness`}
            onClick={() => prefer({ surround: value })}
          >
            {value}
          </button>
        ))}
      </fieldset>
      <SeenByChoice />
    </div>
  );
}
