/** Samples of paints: asked for, sent, seen under a light, approved; and which walls still want one. */
import type { Act } from './acts.ts';
import type { ShowDocuments } from './documents.ts';
import { newId } from './identity.ts';
import type { PaintId, Sample, SampleId, SampleKind, SurfaceId } from './schema.ts';
import { surfaceParts } from './schema.ts';
import type { Role } from './seats.ts';
import type { SampleWord, Word } from './talk.ts';

/** How far a sample has come. */
export type SampleState = 'to post' | 'sent' | 'seen' | 'approved';

export const SAMPLE_STATES: readonly SampleState[] = ['to post', 'sent', 'seen', 'approved'];

export interface SampleStanding {
  readonly id: SampleId;
  readonly sample: Sample;
  readonly state: SampleState;
  /** In the order they were said. */
  readonly seen: readonly SampleWord[];
  readonly approved: readonly SampleWord[];
}

/** Lights a sample is judged under, offered while typing; any other word is taken too. */
export const SAMPLE_LIGHTS = ['daylight', 'gallery lamps', 'studio light', 'tungsten', 'fluorescent light'] as const;

/** Whose approval a paint needs: anybody of these, or whoever the sample was sent to. */
export const APPROVERS: readonly Role[] = ['lead', 'curator', 'guest artist'];

/** A sample that is to be made and posted, or with a day one that was sent. */
export function askForSample(
  paintId: PaintId,
  asked: { readonly kind: SampleKind; readonly to: Sample['to']; readonly sentOn?: string },
  id: SampleId = newId(),
): Act & { readonly id: SampleId } {
  const value: Sample = { paintId, kind: asked.kind, to: asked.to, sentOn: asked.sentOn ?? '' };
  const name = value.sentOn === '' ? `ask for a ${value.kind}` : `send a ${value.kind}`;
  return { id, name, changes: [{ root: 'samples', key: id, value: value as never }] };
}

/** The day a sample was sent (ISO date); empty where it was not after all. */
export function sendSample(id: SampleId, sentOn: string): Act {
  return { name: 'send a sample', changes: [{ root: 'samples', key: `${id}/sentOn`, value: sentOn }] };
}

/** A sample that is not wanted any more; what was said of it stays said. */
export function dropSample(id: SampleId): Act {
  return { name: 'drop a sample', changes: [{ root: 'samples', key: `${id}/removed`, value: true }] };
}

export function sayOfSample(
  id: SampleId,
  said: { readonly said: 'seen'; readonly under: string } | { readonly said: 'approved' },
  word: Word,
): Act {
  const key = `${id}/${word.by}/${said.said === 'seen' ? `seen ${said.under}` : 'approved'}`;
  const value: SampleWord = { sampleId: id, ...said, ...word };
  const name = said.said === 'seen' ? 'see a sample' : 'approve a sample';
  return { name, changes: [{ root: 'sampleWords', key, value: value as never }] };
}

/** Takes one's approval back. */
export function takeApprovalBack(id: SampleId, personId: string): Act {
  return {
    name: 'take an approval back',
    changes: [{ root: 'sampleWords', key: `${id}/${personId}/approved`, value: undefined }],
  };
}

/** Samples by the paint they are of, the furthest come first, then the latest sent, then by id. */
export function samplesByPaint(documents: ShowDocuments): ReadonlyMap<PaintId, readonly SampleStanding[]> {
  const words = new Map<SampleId, SampleWord[]>();
  for (const word of documents.all('sampleWords').values()) {
    if (typeof word.at !== 'string' || typeof word.name !== 'string') continue;
    words.set(word.sampleId, [...(words.get(word.sampleId) ?? []), word]);
  }
  const found = new Map<PaintId, SampleStanding[]>();
  for (const [id, sample] of documents.all('samples')) {
    if (typeof sample.paintId !== 'string' || typeof sample.to?.name !== 'string') continue;
    const own = (words.get(id) ?? []).sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.by < b.by ? -1 : 1));
    const seen = own.filter(({ said }) => said === 'seen');
    const approved = own.filter(({ said }) => said === 'approved');
    const state =
      approved.length > 0 ? 'approved' : seen.length > 0 ? 'seen' : sample.sentOn ? ('sent' as const) : 'to post';
    found.set(sample.paintId, [...(found.get(sample.paintId) ?? []), { id, sample, state, seen, approved }]);
  }
  const far = ({ state }: SampleStanding): number => SAMPLE_STATES.indexOf(state);
  for (const list of found.values()) {
    list.sort(
      (a, b) => far(b) - far(a) || compare(b.sample.sentOn ?? '', a.sample.sentOn ?? '') || compare(a.id, b.id),
    );
  }
  return found;
}

/** Walls, floors and ceilings of rooms by the paint of the deck that is on them. */
export function surfacesByPaint(documents: ShowDocuments): ReadonlyMap<PaintId, readonly SurfaceId[]> {
  const found = new Map<PaintId, SurfaceId[]>();
  for (const [surface, paintId] of documents.all('paints')) {
    const room = documents.get('rooms', surfaceParts(surface)?.roomId ?? '');
    if (room === undefined || documents.get('deck', paintId) === undefined) continue;
    found.set(paintId, [...(found.get(paintId) ?? []), surface]);
  }
  for (const list of found.values()) list.sort();
  return found;
}

/** One line of what is to be ordered and posted: a sample asked for, or a wall's paint that nobody has asked one of. */
export interface SampleToPost {
  readonly paintId: PaintId;
  /** Null where none has been asked for yet. */
  readonly sampleId: SampleId | null;
  readonly kind: SampleKind;
  /** Empty where nobody is named yet. */
  readonly to: string;
  readonly surfaces: readonly SurfaceId[];
}

/** Samples to order and post, by paint in the order of the deck: those asked for, and one for each wall's paint without. */
export function samplesToPost(documents: ShowDocuments): SampleToPost[] {
  const samples = samplesByPaint(documents);
  const surfaces = surfacesByPaint(documents);
  return paintsInOrder(documents).flatMap((paintId): SampleToPost[] => {
    const own = samples.get(paintId) ?? [];
    const on = surfaces.get(paintId) ?? [];
    const asked = own
      .filter(({ sample }) => !sample.sentOn)
      .map(({ id, sample }) => ({ paintId, sampleId: id, kind: sample.kind, to: sample.to.name, surfaces: on }));
    if (asked.length > 0 || own.length > 0 || on.length === 0) return asked;
    return [{ paintId, sampleId: null, kind: 'drawdown', to: '', surfaces: on }];
  });
}

/** Paints as the deck has them. */
export function paintsInOrder(documents: ShowDocuments): PaintId[] {
  return [...documents.all('deck')]
    .sort(([idA, a], [idB, b]) => compare(a.order, b.order) || compare(idA, idB))
    .map(([id]) => id);
}

function compare(a: string, b: string): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
