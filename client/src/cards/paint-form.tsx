/** A paint typed as it was measured: a name and L*, a*, b* under D65. */
import type { LabD65 } from '@enfilade/colour/lab';
import { hexFromLabD65, srgbFromLabD65 } from '@enfilade/colour/spaces';
import { type FormEvent, useId, useState } from 'react';

const AXES = [
  { axis: 'L', name: 'L*', least: 0, most: 100 },
  { axis: 'a', name: 'a*', least: -128, most: 128 },
  { axis: 'b', name: 'b*', least: -128, most: 128 },
] as const;

type Typed = Record<'L' | 'a' | 'b', string>;

/** The colour typed, and what is wrong with each number that is no number of its range. */
function labFromTyped(typed: Typed): { lab: LabD65 | null; wrong: Partial<Typed> } {
  const wrong: Partial<Typed> = {};
  const lab = { L: 0, a: 0, b: 0 };
  for (const { axis, name, least, most } of AXES) {
    const text = typed[axis].trim().replace(',', '.').replace('−', '-');
    const value = Number(text);
    if (text === '' || !Number.isFinite(value)) wrong[axis] = `${name} is to be a number`;
    else if (value < least || value > most) wrong[axis] = `${name} lies between ${least} and ${most}`;
    else lab[axis] = value;
  }
  return { lab: Object.keys(wrong).length === 0 ? lab : null, wrong };
}

export function PaintForm(props: {
  tryOn: (paint: { name: string; lab: LabD65 }) => void;
  take: (paint: { name: string; lab: LabD65 }) => void;
  leave: () => void;
  /** What taking it does, in words. */
  taking?: string;
  /** What has not been done while it is wrong. */
  notYet?: string;
}) {
  const { tryOn, take, leave, taking = 'Paint the wall', notYet = 'Nothing is painted yet' } = props;
  const id = useId();
  const [name, setName] = useState('');
  const [typed, setTyped] = useState<Typed>({ L: '', a: '', b: '' });
  const [asked, setAsked] = useState(false);
  const { lab, wrong } = labFromTyped(typed);
  const type = (axis: keyof Typed, text: string): void => {
    const next = { ...typed, [axis]: text };
    setTyped(next);
    const read = labFromTyped(next).lab;
    if (read !== null) tryOn({ name: name.trim() || 'typed', lab: read });
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (lab !== null && name.trim() !== '') take({ name: name.trim(), lab });
  };
  const troubles = asked ? [...(name.trim() === '' ? ['It needs a name'] : []), ...Object.values(wrong)] : [];
  return (
    <form className="paint-form" onSubmit={submit} noValidate>
      <i className="paint-form-patch" style={lab === null ? {} : { background: hexFromLabD65(lab) }} />
      <span>
        <label htmlFor={`${id}-name`}>Name</label>
        <input
          id={`${id}-name`}
          className="paint-form-name"
          value={name}
          autoComplete="off"
          // biome-ignore lint/a11y/noAutofocus: the form opens because the person asked to write in it
          autoFocus
          aria-invalid={asked && name.trim() === ''}
          onChange={(event) => setName(event.target.value)}
        />
      </span>
      {AXES.map(({ axis, name: label }) => (
        <span key={axis}>
          <label htmlFor={`${id}-${axis}`}>{label}</label>
          <input
            id={`${id}-${axis}`}
            inputMode="decimal"
            autoComplete="off"
            value={typed[axis]}
            aria-invalid={asked && wrong[axis] !== undefined}
            onChange={(event) => type(axis, event.target.value)}
          />
        </span>
      ))}
      <button type="submit" className="act main">
        {taking}
      </button>
      <button type="button" className="act" onClick={leave}>
        leave it
      </button>
      <p className="paint-form-words t1" role={troubles.length > 0 ? 'alert' : undefined}>
        {troubles.length > 0
          ? `${troubles.join('. ')}. ${notYet}.`
          : lab !== null && !srgbFromLabD65(lab).inGamut
            ? 'This screen cannot show it: it is drawn as near as it can, in the same lightness and hue.'
            : 'CIELAB under D65 for the 2° observer, as measured on the drawdown.'}
      </p>
    </form>
  );
}
