/** Ways to arrange that are looked at together: told through presence, written nowhere. */
import type { Presence } from '@enfilade/shared/presence';
import { useEffect } from 'react';
import { useOthers, useShow } from '../sync/hooks.ts';
import type { Other } from '../sync/presence-room.ts';

/** Says what I look at, null for nothing; answers who else looks at ways, in the hang or proposal I am in. */
export function useArranging(mine: NonNullable<Presence['arranging']> | null): readonly Other[] {
  const { presence, layerId } = useShow();
  const text = JSON.stringify(mine);
  useEffect(() => presence.say({ arranging: JSON.parse(text) }), [presence, text]);
  useEffect(() => () => presence.say({ arranging: null }), [presence]);
  return useOthers().filter((other) => other.presence.arranging && (other.presence.layer ?? null) === layerId);
}
