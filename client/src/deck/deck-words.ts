/** What the deck says of its paints and their samples, in words. Pure. */
import type { Lrv } from '@enfilade/colour/paints';
import type { ShowDocuments } from '@enfilade/shared/documents';
import type { SampleStanding } from '@enfilade/shared/samples';
import { type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { surfaceName } from '@enfilade/shared/surface-names';

/** 'stated', 'from reflectance', '±2, from lightness'. */
export const LRV_WORDS: Record<Lrv['basis'], string> = {
  stated: 'as stated',
  reflectance: 'summed, D65/10°',
  lightness: '± 2, from L*',
};

/** 'Dye House, east wall', 'Wheel Room, 4 walls'; '' where on none. */
export function onText(documents: ShowDocuments, surfaces: readonly SurfaceId[]): string {
  const byRoom = new Map<string, SurfaceId[]>();
  for (const surface of surfaces) {
    const room = surfaceParts(surface)?.roomId ?? '';
    byRoom.set(room, [...(byRoom.get(room) ?? []), surface]);
  }
  return [...byRoom]
    .map(([roomId, own]) =>
      own.length === 1
        ? surfaceName(documents, own[0] as SurfaceId)
        : `${documents.get('rooms', roomId)?.name ?? ''}, ${own.length} walls`,
    )
    .join('; ');
}

/** The furthest sample in a few words: 'drawdown approved by Dov Castellane', 'no sample yet'. */
export function samplesText(samples: readonly SampleStanding[], wanted: boolean): string {
  const [furthest] = samples;
  if (furthest === undefined) return wanted ? 'no sample yet' : '';
  const { kind, to } = furthest.sample;
  const more = samples.length === 1 ? '' : `; ${samples.length - 1} more`;
  if (furthest.state === 'approved') return `${kind} approved by ${namesOf(furthest.approved)}${more}`;
  if (furthest.state === 'seen') return `${kind} seen by ${namesOf(furthest.seen)}, not approved${more}`;
  return furthest.state === 'sent' ? `${kind} sent to ${to.name}${more}` : `${kind} to post to ${to.name}${more}`;
}

export function namesOf(words: readonly { readonly name: string }[]): string {
  const names = [...new Set(words.map(({ name }) => name))];
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** 'L* 33.0  a* −25.0  b* −4.0'. */
export function labText({ L, a, b }: { readonly L: number; readonly a: number; readonly b: number }): string {
  const text = (value: number): string => value.toFixed(1).replace('-', '−');
  return `L* ${text(L)}  a* ${text(a)}  b* ${text(b)}`;
}
