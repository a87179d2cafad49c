/** Where lost, weak, holds and carries part in this show: the nine figures, and what changes with them. */
import { DEFAULT_THRESHOLDS, type ReadingThresholds, type ReadingWord } from '@enfilade/colour/reading-thresholds';
import { WORST_FIRST } from '@enfilade/shared/colour-desk';
import * as commands from '@enfilade/shared/commands';
import { ownOf, withThreshold, wordsUnder } from '@enfilade/shared/reading-settings';
import { useMemo } from 'react';
import { act } from '../cards/acting.ts';
import { TypedField } from '../cards/typed-field.tsx';
import { useShow } from '../sync/hooks.ts';
import { DeskFold } from './desk-fold.tsx';

type Row = readonly [name: keyof ReadingThresholds, label: string];

const GROUPS: readonly { readonly legend: string; readonly rows: readonly Row[]; readonly note?: string }[] = [
  {
    legend: 'Lost, when all hold',
    rows: [
      ['lostShare', 'of it near the wall, over'],
      ['lostEdge', 'edge off the wall, under'],
    ],
    note: 'and its body is off the wall by less than a weak one’s',
  },
  {
    legend: 'Weak, when one holds',
    rows: [
      ['weakShare', 'of it near the wall, over'],
      ['weakEdge', 'edge off the wall, under'],
      ['weakMean', 'body off the wall, under'],
    ],
  },
  {
    legend: 'Carries, when all hold',
    rows: [
      ['carriesMean', 'body off the wall, at least'],
      ['carriesEdge', 'edge off the wall, at least'],
      ['carriesShare', 'of it near the wall, under'],
      ['carriesRim', 'of its edge near the wall, under'],
    ],
  },
];

const isShare = (name: keyof ReadingThresholds): boolean => DEFAULT_THRESHOLDS[name] < 1;

export function StrictnessBlock({ version }: { readonly version: string }) {
  const show = useShow();
  const { judgements, me } = show;
  // Moving things is the guest artist's too; by what the show is judged is the museum's.
  const frozen = !show.may('hang') || me.person.role === 'guest artist';
  const now = judgements.readingThresholds();
  const own = Object.keys(ownOf(now)).length;
  const set = (name: keyof ReadingThresholds, typed: string): string | null => {
    const figure = Number(typed.replace(',', '.').replace(/\s*%$/, ''));
    if (typed === '' || !Number.isFinite(figure)) return 'a number is wanted';
    const made = withThreshold(now, name, isShare(name) ? figure / 100 : figure);
    if ('issue' in made) return isShare(name) && figure > 100 ? 'a share from 0 to 100 %' : made.issue;
    return act(show, commands.setSetting('readingThresholds', made.own), 'every work is read anew')
      ? null
      : 'cannot be set just now';
  };
  return (
    <DeskFold
      name="strictness"
      heading="Where the words part"
      summary={own === 0 ? 'lost, weak, holds, carries as by default' : `this show’s own: ${own} of 9 figures`}
    >
      <p className="t1">Near is within ΔE00 10; off is the mean ΔE00. What is none of these three holds.</p>
      {GROUPS.map(({ legend, rows, note }) => (
        <fieldset key={legend} className="strictness">
          <legend>{legend}</legend>
          {rows.map(([name, label]) => (
            <TypedField
              key={name}
              label={label}
              text={isShare(name) ? `${Math.round(now[name] * 1000) / 10} %` : String(now[name])}
              frozen={frozen}
              take={(typed) => set(name, typed)}
            />
          ))}
          {note === undefined ? null : <p className="t1">{note}</p>}
        </fieldset>
      ))}
      <StrictnessEffect thresholds={now} own={own} version={version} />
      {frozen || own === 0 ? null : (
        <p>
          <button
            type="button"
            onClick={() => act(show, commands.setSetting('readingThresholds', {}), 'as by default again')}
          >
            as by default
          </button>
        </p>
      )}
    </DeskFold>
  );
}

/** What of all that hangs would read how, now and by default. */
function StrictnessEffect(props: { thresholds: ReadingThresholds; own: number; version: string }) {
  const { judgements } = useShow();
  const { thresholds, own, version } = props;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what hangs and what it looks like
  const texts = useMemo(() => {
    const under = wordsUnder(judgements, thresholds);
    return [countText(under), own === 0 ? null : countText(wordsUnder(judgements, DEFAULT_THRESHOLDS))];
  }, [judgements, thresholds, own, version]);
  return (
    <p className="t1" aria-live="polite">
      Of all that hangs: {texts[0]}.{texts[1] === null ? '' : ` By default: ${texts[1]}.`} Own figures of good practice,
      not measured on people; advice all the same.
    </p>
  );
}

function countText(counts: Record<ReadingWord, number>): string {
  return WORST_FIRST.map((word) => `${counts[word]} ${word}`).join(', ');
}
