/** A paint added or corrected by hand: name, code, L*a*b* with its white point, LRV, sheen. */
import { isInScreenGamut, type MeasuredPaint } from '@enfilade/colour/paints';
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { howMeasured, measuredPaintOf, paintFrom } from '@enfilade/shared/paint-records';
import type { Paint } from '@enfilade/shared/schema';
import { type FormEvent, useId, useState } from 'react';
import { LabFields } from './lab-fields.tsx';
import { labFromTyped, typedFrom, UNTYPED } from './typed-lab.ts';

export function PaintFacts(props: {
  readonly paint: Paint | null;
  readonly take: (facts: Partial<Omit<Paint, 'order'>> & Pick<Paint, 'name' | 'lab'>) => void;
  readonly leave: () => void;
}) {
  const { paint, take, leave } = props;
  const id = useId();
  const first =
    paint === null
      ? UNTYPED
      : typedFrom(measuredPaintOf(paint).lab ?? { ...paint.lab, illuminant: 'D65', observer: '2°' });
  const [typed, setTyped] = useState(first);
  const [words, setWords] = useState({
    name: paint?.name ?? '',
    code: paint?.code ?? '',
    lrv: typeof paint?.lrv === 'number' ? String(paint.lrv) : '',
    sheen: paint?.sheen ?? '',
  });
  const [asked, setAsked] = useState(false);
  const { lab, wrong } = labFromTyped(typed);
  const lrv = Number(words.lrv.replace(',', '.'));
  const lrvWrong = words.lrv.trim() !== '' && !(lrv >= 0 && lrv <= 100);
  const asItWas = paint !== null && Object.keys(first).every((key) => first[key as 'L'] === typed[key as 'L']);
  const troubles = [
    ...(words.name.trim() === '' ? ['It needs a name'] : []),
    ...Object.values(wrong),
    ...(lrvWrong ? ['LRV lies between 0 and 100'] : []),
  ];
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (troubles.length > 0 || lab === null) return;
    const plain = {
      name: words.name.trim(),
      code: words.code.trim(),
      sheen: words.sheen.trim(),
      lrv: words.lrv.trim() === '' ? null : lrv,
    };
    if (asItWas) {
      take({ ...plain, lab: paint.lab });
      return;
    }
    const read: MeasuredPaint = { name: plain.name, lab };
    take({ ...paintFrom(read), ...plain });
  };
  const shown = lab === null ? null : asItWas ? paint.lab : paintFrom({ name: '', lab }).lab;
  const field = (key: keyof typeof words, label: string, className = '') => (
    <span>
      <label htmlFor={`${id}-${key}`}>{label}</label>
      <input
        id={`${id}-${key}`}
        className={className}
        value={words[key]}
        autoComplete="off"
        aria-invalid={asked && ((key === 'name' && words.name.trim() === '') || (key === 'lrv' && lrvWrong))}
        onChange={(event) => setWords({ ...words, [key]: event.target.value })}
      />
    </span>
  );
  return (
    <form
      className="deck-form"
      onSubmit={submit}
      noValidate
      aria-label={paint === null ? 'A new paint' : `Correct ${paint.name}`}
    >
      <i className="deck-form-patch" style={shown === null ? {} : { background: hexFromLabD65(shown) }} />
      {field('name', 'Name', 'deck-form-name')}
      {field('code', 'Code')}
      <LabFields typed={typed} wrong={asked ? wrong : {}} type={setTyped} />
      {field('lrv', 'LRV, if stated')}
      {field('sheen', 'Sheen')}
      <button type="submit" className="act main">
        {paint === null ? 'Put it in the deck' : 'Correct it'}
      </button>
      <button type="button" className="act" onClick={leave}>
        leave it
      </button>
      <p className="deck-form-words t1" role={asked && troubles.length > 0 ? 'alert' : undefined}>
        {asked && troubles.length > 0
          ? `${troubles.join('. ')}. Nothing is changed yet.`
          : wordsOf(paint, typed.white, asItWas, shown !== null && !isInScreenGamut(shown))}
      </p>
    </form>
  );
}

function wordsOf(paint: Paint | null, white: string, asItWas: boolean, beyond: boolean): string {
  const how =
    asItWas && paint !== null
      ? `Measured: ${howMeasured(paint)}.`
      : `${white === 'D65/2°' ? 'Shown as it is.' : `Brought from ${white} to D65/2° by CAT16.`}${paint?.reflectance ? ' Its reflectance gives way to it.' : ''}`;
  return beyond ? `${how} It is beyond this screen: drawn as near as it can, in its lightness and hue.` : how;
}
