/** A paint typed as it was measured: a name, and L*, a*, b* with the white point they were measured under. */
import type { LabD65 } from '@enfilade/colour/lab';
import { hexFromLabD65, srgbFromLabD65 } from '@enfilade/colour/spaces';
import { paintFrom } from '@enfilade/shared/paint-records';
import type { Paint } from '@enfilade/shared/schema';
import { type FormEvent, useId, useState } from 'react';
import { LabFields } from '../deck/lab-fields.tsx';
import { labFromTyped, type TypedLab, UNTYPED } from '../deck/typed-lab.ts';

export function PaintForm(props: {
  tryOn: (paint: { name: string; lab: LabD65 }) => void;
  take: (paint: Omit<Paint, 'order'>) => void;
  leave: () => void;
  /** What taking it does, in words. */
  taking?: string;
  /** What has not been done while it is wrong. */
  notYet?: string;
}) {
  const { tryOn, take, leave, taking = 'Paint the wall', notYet = 'Nothing is painted yet' } = props;
  const id = useId();
  const [name, setName] = useState('');
  const [typed, setTyped] = useState(UNTYPED);
  const [asked, setAsked] = useState(false);
  const { lab: measured, wrong } = labFromTyped(typed);
  const lab = measured === null ? null : paintFrom({ name: '', lab: measured }).lab;
  const type = (next: TypedLab): void => {
    setTyped(next);
    const read = labFromTyped(next).lab;
    if (read !== null) tryOn({ name: name.trim() || 'typed', lab: paintFrom({ name: '', lab: read }).lab });
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (measured !== null && name.trim() !== '') take(paintFrom({ name: name.trim(), lab: measured }));
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
      <LabFields typed={typed} wrong={asked ? wrong : {}} type={type} />
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
            : typed.white === 'D65/2°'
              ? 'CIELAB under D65 for the 2° observer, as measured on the drawdown.'
              : `Measured under ${typed.white}, brought to D65/2° by CAT16.`}
      </p>
    </form>
  );
}
