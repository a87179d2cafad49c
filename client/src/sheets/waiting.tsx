/** The week's first look: what holds the show up, on whom, by when. Each line goes to its thing. */
import { type WaitingLine, waitingOf, waitsFor } from '@enfilade/shared/waiting';
import { useState } from 'react';
import { usePictures, useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { ShowDates } from './show-dates.tsx';
import { SPANS, type Span, spanOf, todayIso } from './waiting-days.ts';
import { WaitingRow } from './waiting-row.tsx';
import { Weeks } from './weeks.tsx';
import './talk-pages.css';
import './waiting.css';

/** The whole show is read for this page: it keeps up within this, ms. */
const REST_MS = 250;

const ORDERS = ['by when', 'on whom', 'what'] as const;
type Order = (typeof ORDERS)[number];

export function Waiting() {
  const { judgements, me } = useShow();
  useRestingRoots(
    REST_MS,
    'vignettes',
    'memberOf',
    'places',
    'paints',
    'deck',
    'objects',
    'pieces',
    'rooms',
    'signatures',
    'settings',
    'proposals',
    'proposed',
    'remarks',
    'samples',
    'sampleWords',
    'loans',
    'lights',
    'limits',
    'openings',
    'fixtures',
    'acceptances',
    'people',
  );
  usePictures();
  const [order, setOrder] = useState<Order>('by when');
  const [mine, setMine] = useState(false);
  const today = todayIso();
  const hangBegins = judgements.setting('hangBegins');
  const all = waitingOf(judgements);
  const numbered = all.map((line, index) => ({ line, number: index + 1 }));
  const listed = numbered.filter(({ line }) => !mine || waitsFor(line, me.person));
  const soon = all.filter(({ byDay }) => ['overdue', 'this week'].includes(spanOf(byDay, today, hangBegins))).length;
  const groups = grouped(listed, order, (line) => spanOf(line.byDay, today, hangBegins));
  return (
    <div className="talk-page waiting">
      <header className="talk-head">
        <h1>Waiting</h1>
        <p className="cap">{headText(all.length, soon)}</p>
        <nav aria-label="Order">
          {ORDERS.map((name) => (
            <button
              key={name}
              type="button"
              className={name === order ? 'cmd on' : 'cmd'}
              aria-pressed={name === order}
              onClick={() => setOrder(name)}
            >
              {name}
            </button>
          ))}
          <button type="button" className={mine ? 'cmd on' : 'cmd'} aria-pressed={mine} onClick={() => setMine(!mine)}>
            only mine {all.filter((line) => waitsFor(line, me.person)).length}
          </button>
        </nav>
      </header>
      {groups.map(({ name, lines }) => (
        <section className="waiting-group" key={name} aria-label={name}>
          <h2 className="it">{name}</h2>
          <ol>
            {lines.map(({ line, number }) => (
              <WaitingRow key={line.id} line={line} number={number} today={today} />
            ))}
          </ol>
        </section>
      ))}
      <Weeks lines={numbered} today={today} />
      <ShowDates />
    </div>
  );
}

function headText(count: number, soon: number): string {
  if (count === 0) return 'Nothing holds the show up.';
  const things = count === 1 ? 'One thing holds the show up.' : `${count} things hold the show up.`;
  if (soon === 0) return things;
  return `${things} ${soon === 1 ? 'One of them comes' : `${soon} of them come`} due this week.`;
}

interface Group {
  readonly name: string;
  readonly lines: readonly { readonly line: WaitingLine; readonly number: number }[];
}

const SPAN_NAMES: Record<Span, string> = {
  overdue: 'Overdue',
  'this week': 'This week',
  'before the hang': 'Before the hang',
  later: 'Later',
  'no day set': 'No day set',
};

function grouped(lines: Group['lines'], order: Order, spanOfLine: (line: WaitingLine) => Span): Group[] {
  const keyOf = ({ line }: Group['lines'][number]): string => {
    if (order === 'by when') return SPAN_NAMES[spanOfLine(line)];
    if (order === 'what') return KIND_NAMES[line.kind];
    return line.persons.length > 0 ? line.persons.map(({ name }) => name).join(', ') : line.roles.join(', ');
  };
  const groups = new Map<string, Group['lines'][number][]>();
  for (const entry of lines) groups.set(keyOf(entry), [...(groups.get(keyOf(entry)) ?? []), entry]);
  const list = [...groups].map(([name, entries]) => ({ name, lines: entries }));
  if (order !== 'by when') return list.sort((a, b) => (a.name < b.name ? -1 : 1));
  const place = ({ name }: Group): number => SPANS.findIndex((span) => SPAN_NAMES[span] === name);
  return list.sort((a, b) => place(a) - place(b));
}

const KIND_NAMES: Record<WaitingLine['kind'], string> = {
  clash: 'Clashes',
  loan: 'Loans',
  'sign-off': 'Sign-offs',
  question: 'Questions',
  proposal: 'Proposals',
  sample: 'Samples',
  size: 'Sizes',
  picture: 'Pictures',
  caution: 'Cautions',
};

export default Waiting;
