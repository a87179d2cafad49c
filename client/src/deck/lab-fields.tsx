/** The fields of measured L*a*b*: three numbers, and the white point that is never left unsaid. */
import { useId } from 'react';
import { AXES, type TypedLab, WHITES } from './typed-lab.ts';

export function LabFields(props: {
  readonly typed: TypedLab;
  readonly wrong: Partial<Record<'L' | 'a' | 'b', string>>;
  readonly type: (typed: TypedLab) => void;
}) {
  const { typed, wrong, type } = props;
  const id = useId();
  const whites = WHITES.includes(typed.white) ? WHITES : [typed.white, ...WHITES];
  return (
    <>
      {AXES.map(({ axis, name }) => (
        <span key={axis}>
          <label htmlFor={`${id}-${axis}`}>{name}</label>
          <input
            id={`${id}-${axis}`}
            inputMode="decimal"
            autoComplete="off"
            value={typed[axis]}
            aria-invalid={wrong[axis] !== undefined}
            onChange={(event) => type({ ...typed, [axis]: event.target.value })}
          />
        </span>
      ))}
      <span>
        <label htmlFor={`${id}-white`}>measured under</label>
        <select
          id={`${id}-white`}
          value={typed.white}
          onChange={(event) => type({ ...typed, white: event.target.value })}
        >
          {whites.map((white) => (
            <option key={white}>{white}</option>
          ))}
        </select>
      </span>
    </>
  );
}
