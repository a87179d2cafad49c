/** The limits this show goes by: those of its jurisdiction, with what the museum has edited laid over them. */
import {
  DEFAULT_PROFILE,
  type Limit,
  type LimitName,
  type PracticeProfile,
  profileFrom,
  UK_PROFILE,
} from '@enfilade/practice/practice-profile';
import type { Act } from './acts.ts';
import type { ShowDocuments } from './documents.ts';
import { DEFAULT_SETTINGS } from './schema.ts';

/** What a museum may begin from; any other jurisdiction begins from the first, and is to be edited. */
export const KNOWN_PROFILES: readonly PracticeProfile[] = [DEFAULT_PROFILE, UK_PROFILE];

/** The limits a jurisdiction begins with. */
export function startingProfileOf(jurisdiction: string): PracticeProfile {
  return KNOWN_PROFILES.find((known) => known.jurisdiction === jurisdiction) ?? DEFAULT_PROFILE;
}

const made = new WeakMap<ShowDocuments, { readonly key: string; readonly profile: PracticeProfile }>();

/** The limits as they stand; one that was edited into nonsense is as the jurisdiction has it. */
export function practiceProfileOf(documents: ShowDocuments): PracticeProfile {
  const set = documents.get('settings', 'jurisdiction');
  const jurisdiction = typeof set === 'string' && set.trim() !== '' ? set : DEFAULT_SETTINGS.jurisdiction;
  const key = `${documents.version('limits')}|${jurisdiction}`;
  const known = made.get(documents);
  if (known?.key === key) return known.profile;
  const limits = { ...startingProfileOf(jurisdiction).limits, ...Object.fromEntries(goodLimits(documents)) };
  const { profile } = profileFrom({ jurisdiction, limits });
  made.set(documents, { key, profile });
  return profile;
}

/** Edited limits that are limits at all. */
function goodLimits(documents: ShowDocuments): [string, Limit][] {
  return [...documents.all('limits')].filter(
    ([name, limit]) => profileFrom({ jurisdiction: 'any', limits: { [name]: limit } }).issues.length === 0,
  );
}

/** Sets a limit with the ground it stands on; null brings back the jurisdiction's own. */
export function setLimit(name: LimitName, limit: Limit | null): Act {
  const value = limit === null ? undefined : { value: limit.value, source: limit.source };
  return { name: 'change a limit', changes: [{ root: 'limits', key: name, value }] };
}
