/** All that was done since a moment, page by page. */
import type { Deed, HistoryAnswer } from '@enfilade/shared/deeds';

/** A day of several people is some thousand deeds; what is older than this many pages is not asked for. */
const PAGES_AT_MOST = 40;

/**
 * Every deed since then, newest first. `get` answers `history?<query>`.
 * @throws what `get` throws.
 */
export async function deedsSince(
  get: (query: string) => Promise<HistoryAnswer>,
  sinceMs: number,
): Promise<readonly Deed[]> {
  const since = encodeURIComponent(new Date(sinceMs).toISOString());
  const deeds: Deed[] = [];
  for (let page = 0; page < PAGES_AT_MOST; page++) {
    const last = deeds.at(-1);
    const answer = await get(`limit=500&since=${since}${last === undefined ? '' : `&before=${last.n}`}`);
    deeds.push(...answer.deeds);
    if (!answer.older || answer.deeds.length === 0) break;
  }
  return deeds;
}
