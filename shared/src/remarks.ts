/** Remarks: said about a thing, answered, settled, reopened; and what each person has not read yet. */
import type { Act } from './acts.ts';
import type { ShowDocuments } from './documents.ts';
import { newId } from './identity.ts';
import type { Asked, Remark, RemarkAbout, RemarkId, Word } from './talk.ts';

export interface RemarkThread {
  readonly id: RemarkId;
  readonly remark: Remark;
  /** In the order they were written. */
  readonly answers: readonly (Remark & { readonly id: RemarkId })[];
  /** ISO time of its newest word. */
  readonly lastAt: string;
  /** True while the person asked has not answered and nobody has settled it. */
  readonly waitsForAnswer: boolean;
}

export function remark(
  said: { readonly about: RemarkAbout; readonly text: string; readonly asked?: Asked | null },
  word: Word,
  id: RemarkId = newId(),
): Act & { readonly id: RemarkId } {
  const value: Remark = { ...said, ...word };
  return { id, name: 'remark', changes: [{ root: 'remarks', key: id, value: value as never }] };
}

/** @throws RangeError when the remark answered is not there. */
export function answer(
  documents: ShowDocuments,
  of: RemarkId,
  text: string,
  word: Word,
  id: RemarkId = newId(),
): Act & { readonly id: RemarkId } {
  const first = documents.get('remarks', of);
  if (first === undefined) throw new RangeError(`no remark '${of}' to answer`);
  const value: Remark = { about: first.about, text, of, ...word };
  return { id, name: 'answer', changes: [{ root: 'remarks', key: id, value: value as never }] };
}

export function settleRemark(id: RemarkId, word: Word | null): Act {
  return {
    name: word === null ? 'reopen a remark' : 'settle a remark',
    changes: [{ root: 'remarks', key: `${id}/settled`, value: word as never }],
  };
}

export function ask(id: RemarkId, asked: Asked | null): Act {
  return { name: 'ask', changes: [{ root: 'remarks', key: `${id}/asked`, value: asked as never }] };
}

/** Takes a remark back; only the words go, the thread's other answers stay. */
export function takeBack(id: RemarkId): Act {
  return { name: 'take a remark back', changes: [{ root: 'remarks', key: `${id}/removed`, value: true }] };
}

export function markRead(personId: string, id: RemarkId, upTo: string): Act {
  return { name: 'read', changes: [{ root: 'readMarks', key: `${personId}/${id}`, value: upTo }] };
}

/** Every thread, the newest word first. */
export function threadsOf(documents: ShowDocuments): RemarkThread[] {
  const answers = new Map<RemarkId, (Remark & { id: RemarkId })[]>();
  const firsts: [RemarkId, Remark][] = [];
  for (const [id, said] of documents.all('remarks')) {
    if (typeof said.text !== 'string' || typeof said.at !== 'string' || said.about === undefined) continue;
    if (said.of === undefined) firsts.push([id, said]);
    else answers.set(said.of, [...(answers.get(said.of) ?? []), { ...said, id }]);
  }
  const threads = firsts.map(([id, said]): RemarkThread => {
    const own = (answers.get(id) ?? []).sort((a, b) => (a.at === b.at ? (a.id < b.id ? -1 : 1) : a.at < b.at ? -1 : 1));
    const waits = said.asked && !said.settled && !own.some(({ by }) => by === said.asked?.personId);
    return { id, remark: said, answers: own, lastAt: own.at(-1)?.at ?? said.at, waitsForAnswer: Boolean(waits) };
  });
  return threads.sort((a, b) => (a.lastAt === b.lastAt ? (a.id < b.id ? -1 : 1) : a.lastAt > b.lastAt ? -1 : 1));
}

/** Whether the thread holds a word of someone else's that this person has not read. */
export function isUnread(documents: ShowDocuments, thread: RemarkThread, personId: string): boolean {
  const mark = documents.get('readMarks', `${personId}/${thread.id}`) ?? '';
  return [thread.remark, ...thread.answers].some(({ by, at }) => by !== personId && at > mark);
}

export function sameAbout(a: RemarkAbout, b: RemarkAbout): boolean {
  return a.kind === b.kind && aboutKey(a) === aboutKey(b);
}

/** One text per thing a remark can be tied to. */
export function aboutKey(about: RemarkAbout): string {
  switch (about.kind) {
    case 'piece':
      return about.pieceId;
    case 'vignette':
      return about.vignetteId;
    case 'wall':
      return about.surface;
    case 'spot':
      return `${about.surface} ${about.xMm} ${about.yMm}`;
    case 'paint':
      return about.paintId;
    case 'proposal':
      return about.proposalId;
  }
}
