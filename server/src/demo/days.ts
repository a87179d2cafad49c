/** What of the demo has days: the show's calendar, the night of the proposal, what people said since. Seen from today. */
import type { Change } from '@enfilade/shared/root-snapshot';
import type { Json } from '@enfilade/shared/schema';
import type { Role } from '@enfilade/shared/seats';
import type { Remark, RemarkAbout, Word } from '@enfilade/shared/talk';
import { loanDays } from './loans.ts';
import { NIGHT_PROPOSAL } from './proposal.ts';

interface Someone {
  readonly by: string;
  readonly name: string;
  readonly role: Role;
}

const DOV: Someone = { by: 'castellane', name: 'Dov Castellane', role: 'curator' };
const ISOLDE: Someone = { by: 'fennimarsh', name: 'Isolde Fennimarsh', role: 'guest artist' };
const AMA: Someone = { by: 'trevithian', name: 'Ama Trevithian', role: 'registrar' };
const PIET: Someone = { by: 'oyelaran', name: 'Piet Oyelaran', role: 'preparator' };

/** Days from today. */
const HANG_BEGINS = 27;
const CLOSES = 164;

/** Changes of the hang's settings and of the talk, in the order they are to be written. */
export function dayFacts(now: Date): Change[] {
  const day = (after: number): string => isoDay(new Date(now.getFullYear(), now.getMonth(), now.getDate() + after, 12));
  const at = (daysAgo: number, hour: number, minute: number): string =>
    new Date(now.getFullYear(), now.getMonth(), now.getDate() - daysAgo, hour, minute).toISOString();
  const word = (who: Someone, when: string): Word => ({ ...who, at: when });
  const remark = (id: string, about: RemarkAbout, text: string, said: Word, more: Partial<Remark> = {}): Change => ({
    root: 'remarks',
    key: id,
    value: { about, text, ...said, ...more } as unknown as Json,
  });
  const thermostat: RemarkAbout = { kind: 'spot', surface: 'dye:head', xMm: 5830, yMm: 1500 };
  return [
    { root: 'settings', key: 'agreeBy', value: day(9) },
    { root: 'settings', key: 'hangBegins', value: day(HANG_BEGINS) },
    { root: 'settings', key: 'opens', value: day(46) },
    { root: 'settings', key: 'closes', value: day(CLOSES) },
    ...loanDays(day, HANG_BEGINS, CLOSES),
    { root: 'proposals', key: `${NIGHT_PROPOSAL}/at`, value: at(1, 1, 40) },
    remark(
      'loud-red',
      { kind: 'proposal', proposalId: NIGHT_PROPOSAL },
      'Is the red as loud beside this yellow as it is on the green? I should like to see a board before I answer.',
      word(DOV, at(1, 8, 51)),
      { asked: { personId: ISOLDE.by, name: ISOLDE.name, byDay: day(2) } },
    ),
    remark(
      'rain-light',
      { kind: 'piece', pieceId: 'hanging-2#1' },
      'This one may have 50 lux and not longer than 120 days. The window opposite has no blind yet.',
      word(AMA, at(1, 9, 12)),
      { asked: { personId: PIET.by, name: PIET.name, byDay: day(5) } },
    ),
    remark(
      'thermostat',
      thermostat,
      'The thermostat stays where it is; the electrician came and shook his head.',
      word(PIET, at(2, 15, 5)),
      { settled: word(DOV, at(2, 16, 20)) },
    ),
    remark('thermostat-answer', thermostat, 'Then the view goes up, not across.', word(DOV, at(2, 16, 19)), {
      of: 'thermostat',
    }),
  ];
}

function isoDay(date: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
