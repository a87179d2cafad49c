/** What is being brought into the collection: what of it waits, what stays out, its pictures, and how far it has come. */
import { objectNumberKey } from '@enfilade/records/object-number';
import { alikeAnswers, isUnderstood } from '@enfilade/shared/checklist-answers';
import type { CollectionRecord } from '@enfilade/shared/collection';
import type { CollectionBack } from '@enfilade/shared/collection-in';
import { useEffect, useMemo, useSyncExternalStore } from 'react';
import { say } from '../shell/live-region.tsx';
import { useShow } from '../sync/hooks.ts';
import { fetchNamed } from './named-pictures.ts';
import { type PictureFile, type Refused, reviewOf } from './review.ts';
import { sendPictures } from './sending.ts';

/** A picture and the number it goes to; null: none found, or another picture goes there. */
export interface NumberedPicture {
  readonly picture: PictureFile;
  readonly number: string | null;
  readonly taken: boolean;
}

export function useCollecting() {
  const show = useShow();
  const review = reviewOf(show);
  const state = useSyncExternalStore(review.subscribe, review.snapshot);
  const { into, answers, collected, numbers, numberByHand, matching } = state;
  const reading = state.reading.kind === 'read' ? state.reading : null;
  const collection = reading?.collection ?? null;
  const waiting = collection?.waiting ?? NONE;
  const open = useMemo(() => waiting.filter((row) => !isUnderstood(row, answers)).length, [waiting, answers]);
  const alike = useMemo(() => alikeAnswers(waiting, answers), [waiting, answers]);
  const sound = useMemo(() => state.pictures.filter(({ fault }) => fault === null), [state.pictures]);
  const pictures = useMemo(() => numbered(sound, numbers, numberByHand), [sound, numbers, numberByHand]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again when what is to be matched is another
  useEffect(() => {
    if (into !== 'collection' || sound.length === 0 || numbers !== null) return;
    if (state.reading.kind === 'reading') return;
    review.put({ matching: true });
    review.reader.match(
      show.base,
      sound.map(({ id, file }) => ({ id, fileName: file.name })),
    );
  }, [into, sound, state.reading]);
  const goingPictures = pictures.filter(({ number, taken }) => number !== null && !taken);

  const bringIn = async (): Promise<void> => {
    const control = new AbortController();
    review.stop = control;
    const refused: Refused[] = [];
    try {
      const files = goingPictures.map(({ picture }) => picture.file);
      const tell = (sending: typeof state.sending): void => review.put({ sending });
      const sent = await sendPictures(show.pictures, files, review.hashes, control.signal, tell);
      refused.push(...sent.refused);
      const picturesByNumber = new Map(
        goingPictures.flatMap(({ picture, number }) => {
          const sha256 = sent.hashes.get(picture.file);
          return sha256 === undefined || number === null ? [] : [[number, sha256] as const];
        }),
      );
      const picturesByLine = new Map<number, string>();
      const manifest = state.fetchNamed ? await review.manifestId(show.pictures, control.signal) : null;
      if (manifest !== null && reading !== null) {
        const fetched = await fetchNamed(show.pictures, manifest, reading.reading.rows, control.signal, tell);
        for (const [line, { whole }] of fetched.byLine) if (whole !== null) picturesByLine.set(line, whole);
        refused.push(...fetched.refused);
      }
      const faults = state.pictures.flatMap(({ file, fault }) =>
        fault === null ? [] : [{ fileName: file.name, what: fault }],
      );
      review.put({ sending: null, refusedPictures: [...refused, ...faults] });
      const fileName = reading?.fileName ?? `${goingPictures.length} photographs`;
      review.reader.collect({
        ...{ base: show.base, fileName, goOn: false, answers },
        ...{ picturesByLine, picturesByNumber },
      });
    } catch {
      review.put({ sending: null });
      say('Stopped. Nothing was brought in; it can be begun again.');
    }
  };
  return {
    ...{ into, collection, waiting, open, pictures, matching, collected, mending: state.mending },
    sayInto: review.say.bind(review),
    alike: { count: alike.length, key: [...answers.keys()].at(-1) ?? '' },
    answerAlike: (): void => review.put({ answers: new Map([...answers, ...alike]) }),
    goingPictures: goingPictures.length,
    refusedPictures: state.refusedPictures,
    /** A number typed for a picture: the record it is of, or null where there is none. */
    numberFor: async (id: string, typed: string): Promise<boolean> => {
      const key = objectNumberKey(typed);
      const row = reading?.reading.rows.find(({ object }) => objectNumberKey(object.number) === key);
      const number = row?.object.number ?? (await numberThere(show.base, typed));
      if (number === null) return false;
      review.put({ numberByHand: new Map([...review.state.numberByHand, [id, number]]) });
      return true;
    },
    notThis: (id: string): void => review.put({ numberByHand: new Map([...numberByHand, [id, null]]) }),
    bringIn,
    stop: (): void => review.reader.stopCollecting(),
    goOn: (): void => {
      const nothing = new Map<never, never>();
      const more = { picturesByLine: nothing, picturesByNumber: nothing };
      review.reader.collect({ base: show.base, fileName: reading?.fileName ?? '', goOn: true, answers, ...more });
    },
  };
}

const NONE: readonly never[] = [];

/** The first picture of a number shows its record; a person's word comes before a name. */
function numbered(
  pictures: readonly PictureFile[],
  numbers: ReadonlyMap<string, string> | null,
  byHand: ReadonlyMap<string, string | null>,
): readonly NumberedPicture[] {
  const all = pictures.map((picture) => {
    const said = byHand.get(picture.id);
    return {
      picture,
      number: said === undefined ? (numbers?.get(picture.id) ?? null) : said,
      said: said !== undefined,
    };
  });
  const first = new Map<string, string>();
  const inOrder = [...all].sort(
    (a, b) => Number(b.said) - Number(a.said) || a.picture.file.name.localeCompare(b.picture.file.name, 'en'),
  );
  for (const { picture, number } of inOrder) {
    if (number !== null && !first.has(number)) first.set(number, picture.id);
  }
  return all.map(({ picture, number }) => {
    return { picture, number, taken: number !== null && first.get(number) !== picture.id };
  });
}

async function numberThere(base: string, typed: string): Promise<string | null> {
  const answer = await fetch(`${base}/collection/records?number=${encodeURIComponent(typed)}`).catch(() => null);
  if (answer === null || !answer.ok) return null;
  return ((await answer.json()) as CollectionRecord[])[0]?.number ?? null;
}

/** Takes a bringing-in back, part by part. Answers how many are back and how many stay, or why not. */
export async function takeImportBack(
  base: string,
  id: string,
  tell: (back: number, left: number) => void,
): Promise<{ readonly back: number; readonly stay: number } | { readonly what: string }> {
  const all = { back: 0, stay: 0 };
  try {
    for (;;) {
      const answer = await fetch(`${base}/collection/imports/${id}/back`, { method: 'POST', body: '{}' });
      const told = (await answer.json()) as CollectionBack | { readonly what: string };
      if ('what' in told) return told;
      all.back += told.back;
      all.stay += told.stay;
      if (told.left === 0) return all;
      tell(all.back, told.left);
    }
  } catch {
    return { what: 'The server did not answer. What is taken back is back; press again for the rest.' };
  }
}

export type Collecting = ReturnType<typeof useCollecting>;
