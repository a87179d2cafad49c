/** The guest artist's proposal of the night, and what the curator did in the hang before he had seen it. */
import { place, repaint } from '@enfilade/shared/commands';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { layerOfProposal, propose } from '@enfilade/shared/proposals';
import type { Place } from '@enfilade/shared/schema';
import type { Word } from '@enfilade/shared/talk';

export const NIGHT_PROPOSAL = 'broom-in-flower';

const ISOLDE: Word = {
  by: 'fennimarsh',
  name: 'Isolde Fennimarsh',
  role: 'guest artist',
  at: '2026-05-12T01:40:00.000Z',
};

const WORDS = {
  title: 'Broom in flower',
  reason:
    'On the green the valley goes under. I held the view against a yellow fleece last night and the trees came back; ' +
    'let rain hang over it, and the willow stand further apart.',
};

/** The wall on which the view is lost is painted anew; four things move, one of them already on its way elsewhere. */
const MOVED: readonly (readonly [pieceId: string, to: Place])[] = [
  ['oil-1#1', ['dye:head', 5050, 1700, 0, 0]],
  ['hanging-2#1', ['dye:head', 5050, 2800, 0, 0]],
  ['trap-1#1', ['carrier:bench-1#1/0', 560, 190, 0, 0]],
  ['trap-5#1', ['carrier:bench-1#1/0', 1020, 190, 0, 0]],
];

/** Before he looked in: the trap to the bench's left end. The proposal has it elsewhere, so this is to be settled. */
const SINCE: readonly [pieceId: string, to: Place] = ['trap-1#1', ['carrier:bench-1#1/0', 140, 190, 0, 0]];

/** Writes the proposal over the hang as it stands, then the curator's move. */
export function fillProposal(documents: ShowDocuments, perform: (act: ReturnType<typeof repaint>) => void): void {
  perform(propose(WORDS, ISOLDE, NIGHT_PROPOSAL));
  const layer = layerOfProposal(documents, NIGHT_PROPOSAL);
  const propound = ({ name, changes }: ReturnType<typeof repaint>): void =>
    perform({ name, changes: layer.changesFor(changes) });
  propound(repaint('dye:head', 'weld'));
  propound(place(documents, new Map(MOVED)));
  perform(place(documents, new Map([SINCE])));
}
