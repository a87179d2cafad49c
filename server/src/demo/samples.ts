/** Samples that have gone to and fro before the show is opened: one approved, one seen, one still to be posted. */
import type { Act } from '@enfilade/shared/acts';
import { askForSample, sayOfSample } from '@enfilade/shared/samples';
import type { Word } from '@enfilade/shared/talk';

const ISOLDE = { by: 'fennimarsh', name: 'Isolde Fennimarsh', role: 'guest artist' } as const;
const DOV = { by: 'castellane', name: 'Dov Castellane', role: 'curator' } as const;
const TO_ISOLDE = { personId: ISOLDE.by, name: ISOLDE.name };

const at = (who: typeof ISOLDE | typeof DOV, moment: string): Word => ({ ...who, at: `${moment}:00.000Z` });

/** The saffron's walls have no sample yet, so that the deck shows what to do first. */
export function fillSamples(perform: (act: Act) => void): void {
  const slate = askForSample('slate-blue', { kind: 'drawdown', to: TO_ISOLDE, sentOn: '2026-04-20' }, 'slate-drawdown');
  perform(slate);
  perform(sayOfSample(slate.id, { said: 'seen', under: 'studio light' }, at(ISOLDE, '2026-04-24T22:10')));
  perform(sayOfSample(slate.id, { said: 'seen', under: 'gallery lamps' }, at(DOV, '2026-04-28T09:30')));
  perform(sayOfSample(slate.id, { said: 'approved' }, at(DOV, '2026-04-28T09:40')));
  const green = askForSample(
    'verdigris-deep',
    { kind: 'sample board', to: TO_ISOLDE, sentOn: '2026-04-30' },
    'green-board',
  );
  perform(green);
  perform(sayOfSample(green.id, { said: 'seen', under: 'daylight' }, at(ISOLDE, '2026-05-05T11:20')));
  perform(askForSample('weld', { kind: 'drawdown', to: TO_ISOLDE }, 'weld-drawdown'));
}
