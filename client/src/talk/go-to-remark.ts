/** The way to a remark: its thing is faced, and its thread opened where it stands. */
import type { Judgements } from '@enfilade/shared/judgements';
import type { RemarkAbout, RemarkId } from '@enfilade/shared/talk';
import { choose } from '../selection.ts';
import { openDeck } from '../shell/foot.ts';
import { openCaption } from '../shell/media.ts';
import { go } from '../view-address.ts';
import { openRemark } from './remark-open.ts';
import { wayTo } from './remark-words.ts';

/** False where its thing is nowhere now. */
export function goToRemark(judgements: Judgements, id: RemarkId, about: RemarkAbout): boolean {
  const way = wayTo(judgements, about);
  if (way === null) return false;
  openRemark.set(id);
  go(way.view, way.laid);
  choose(way.pieces);
  if (about.kind !== 'piece') openCaption();
  // What is said of a paint stands with the deck, which going anywhere folds away first.
  const { view } = way;
  if (about.kind === 'paint' && view.sheet === 'wall') setTimeout(() => openDeck(view.surface));
  return true;
}
