/** What is being brought in, as the page reads it, and what the page can do with it until it is written as one act. */
import { MAX_ROWS } from '@enfilade/records/checklist-rows';
import { alikeAnswers, answeredRow, isUnderstood } from '@enfilade/shared/checklist-answers';
import type { ChecklistReading, ChecklistRow, RowAnswer } from '@enfilade/shared/checklist-reading';
import * as commands from '@enfilade/shared/commands';
import { pictureRecordsFrom, type RecordPictures, recordsInFrom } from '@enfilade/shared/records-in';
import { useMemo, useSyncExternalStore } from 'react';
import { act } from '../cards/acting.ts';
import { say } from '../shell/live-region.tsx';
import { useHistory, useRoots, useShow } from '../sync/hooks.ts';
import { fetchNamed, namedIn } from './named-pictures.ts';
import { type HandChoice, type PictureChoice, pictureChoices, picturesByTarget, targetsOf } from './picture-choices.ts';
import { type PictureFile, type Refused, type ReviewState, reviewOf } from './review.ts';
import { sendPictures } from './sending.ts';

export interface PicturePair {
  readonly picture: PictureFile;
  readonly choice: PictureChoice;
}

const NONE: readonly ChecklistRow[] = [];
const NOTES = 12;

export function useBringing() {
  const show = useShow();
  const { documents, history } = show;
  const { undoable } = useHistory();
  const version = useRoots('objects');
  const review = reviewOf(show);
  const state = useSyncExternalStore(review.subscribe, review.snapshot);
  const { answers, byHand, pictures, done } = state;
  const reading = state.reading.kind === 'read' ? state.reading.reading : null;

  const rows = useMemo(() => {
    if (reading === null) return NONE;
    return reading.rows.flatMap((row) => {
      const given = row.waits.flatMap(({ key }) => answers.get(key) ?? []);
      return answeredRow(row, given) ?? [];
    });
  }, [reading, answers]);
  const waiting = useMemo(() => reading?.rows.filter(({ waits }) => waits.length > 0) ?? NONE, [reading]);
  const open = useMemo(() => waiting.filter((row) => !isUnderstood(row, answers)).length, [waiting, answers]);
  const alike = useMemo(() => alikeAnswers(waiting, answers), [waiting, answers]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for the objects
  const targets = useMemo(() => targetsOf(rows, documents.all('objects')), [rows, documents, version]);
  const sound = useMemo(() => pictures.filter(({ fault }) => fault === null), [pictures]);
  const pairs = useMemo((): readonly PicturePair[] => {
    const named = sound.map(({ id, file }) => ({ id, fileName: file.name }));
    const choices = pictureChoices(named, targets, rows, byHand);
    return choices.map((choice, index) => ({ choice, picture: sound[index] as PictureFile }));
  }, [sound, targets, rows, byHand]);
  const named = useMemo(() => namedIn(rows), [rows]);
  const going = pairs.filter(({ choice }) => choice.target !== null && choice.of !== null);

  const decide = (id: string, word: HandChoice): void => {
    const next = new Map(byHand);
    // Given anew it is the latest word.
    next.delete(id);
    review.put({ byHand: next.set(id, { ...byHand.get(id), ...word }) });
  };
  const bringIn = async (): Promise<void> => {
    const control = new AbortController();
    review.stop = control;
    const files = going.map(({ picture }) => picture.file);
    const refusedThere: Refused[] = [];
    try {
      const sent = await sendPictures(show.pictures, files, review.hashes, control.signal, (sending) =>
        review.put({ sending }),
      );
      const hashOf = new Map(going.map(({ picture }) => [picture.id, sent.hashes.get(picture.file)]));
      const byTarget = picturesByTarget(
        going.map(({ choice }) => choice),
        (id) => hashOf.get(id),
      );
      const byLine = new Map<number, RecordPictures>();
      const byObject = new Map<string, RecordPictures>();
      for (const { key, line, objectId } of targets) {
        const own = byTarget.get(key);
        if (own === undefined) continue;
        if (line !== null) byLine.set(line, own);
        else if (objectId !== null) byObject.set(objectId, own);
      }
      const manifest = state.fetchNamed ? await review.manifestId(show.pictures, control.signal) : null;
      if (manifest !== null) {
        const without = rows.filter(({ line }) => !byLine.has(line));
        const fetched = await fetchNamed(show.pictures, manifest, without, control.signal, (sending) =>
          review.put({ sending }),
        );
        for (const [line, own] of fetched.byLine) byLine.set(line, own);
        refusedThere.push(...fetched.refused);
      }
      const incoming = recordsInFrom(documents, rows, byLine);
      const pictured = pictureRecordsFrom(documents, byObject);
      const records = [...incoming.records, ...pictured];
      const refused = [
        ...sent.refused,
        ...refusedThere,
        ...pictures.flatMap(({ file, fault }) => (fault === null ? [] : [{ fileName: file.name, what: fault }])),
      ];
      if (records.length === 0) {
        say('Nothing was brought in.');
        review.put({ sending: null, ignored: refused.map(({ fileName, what }) => `${fileName}: ${what}`) });
        return;
      }
      const made = commands.addObjects(documents, records);
      if (!act(show, made, `${records.length} records are in`)) {
        review.put({ sending: null });
        return;
      }
      const gone = new Set(going.map(({ picture }) => picture.id));
      review.reader.forget();
      review.put({
        sending: null,
        ignored: [],
        answers: new Map(),
        // One whose place another picture has taken must not take it afterwards unasked.
        byHand: new Map(sound.filter(({ id }) => !gone.has(id)).map(({ id }) => [id, { target: null }])),
        // What found no object is kept to be matched by hand, now that the records are in.
        pictures: sound.filter(({ id }) => !gone.has(id)),
        done: {
          name: made.name,
          records: records.length,
          added: incoming.added,
          updated: incoming.updated + pictured.length,
          pictures: [...byLine, ...byObject].reduce((sum, [, own]) => sum + picturesIn(own), 0),
          beyond: incoming.beyond.length,
          refused,
          told: sent.told,
        },
      });
    } catch {
      review.put({ sending: null });
      say('Stopped. Nothing was brought in; it can be begun again.');
    }
  };
  return {
    reading: state.reading,
    rows,
    waiting,
    /** Rows that still wait for a word. */
    open,
    pictures,
    damaged: pictures.filter(({ fault }) => fault !== null),
    pairs,
    going: going.length,
    targets,
    answers,
    /** One answer a cell: the latest. */
    answer: (key: string, given: RowAnswer): void => {
      const cell = key.slice(0, key.lastIndexOf('/') + 1);
      const others = [...answers].filter(([other]) => !other.startsWith(cell));
      review.put({ answers: new Map([...others, [key, given]]) });
    },
    /** Rows that the latest answer could be given to as well, and the key of the cell it was given in. */
    alike: { count: alike.length, key: [...answers.keys()].at(-1) ?? '' },
    answerAlike: (): void => review.put({ answers: new Map([...answers, ...alike]) }),
    decide,
    notes: notesOf(state, reading),
    sending: state.sending,
    done,
    source: state.source,
    /** Asks for the cells of a row as the source has them; null puts them away. */
    lookAtSource: (line: number | null): void =>
      line === null ? review.put({ source: null }) : review.reader.source(line),
    /** Rows of a long file beyond the first, where they were looked at last; and asking for others. */
    window: state.window,
    lookFrom: review.lookFrom,
    fileName: state.reading.kind === 'none' ? 'What was brought in' : state.reading.fileName,
    mending: state.mending,
    unpacking: state.unpacking,
    stopUnpacking: (): void => review.stopUnpacking?.abort(),
    stopReading: (): void => review.reader.forget(),
    readSheet: (sheet: string): void => {
      review.put({ answers: new Map() });
      review.reader.readSheet(sheet);
    },
    mend: review.reader.mend.bind(review.reader),
    take: (files: readonly File[]): void => void review.take(files),
    takeAddress: (address: string): void => void review.takeAddress(show.pictures, address),
    bundle: state.bundle,
    takeBundle: (): void => void review.takeBundle(show.pictures),
    stopBundle: (): void => review.stop?.abort(),
    fetching: state.fetching,
    stopFetching: (): void => review.stopFetching?.abort(),
    named,
    fetchNamed: state.fetchNamed,
    setFetchNamed: (fetchNamed: boolean): void => review.put({ fetchNamed }),
    begin: (): void => review.begin(),
    bringIn,
    stop: (): void => review.stop?.abort(),
    putBack: (): void => {
      history.undo();
      say('All put back.');
      review.begin();
    },
    mayPutBack: done !== null && undoable === done.name,
  };
}

function picturesIn({ whole, byPiece }: RecordPictures): number {
  return new Set([...(whole === null ? [] : [whole]), ...byPiece.values()]).size;
}

function notesOf({ ignored, into, reading: now }: ReviewState, reading: ChecklistReading | null): readonly string[] {
  const count = now.kind === 'read' ? now.collection.count : 0;
  const notes = [
    ...ignored,
    ...(into === 'checklist' && count > MAX_ROWS ? [`${beyondText(count)} Or bring it into the collection.`] : []),
    // Rows that stay out of the collection stand in a list of their own.
    ...(reading?.notes
      .filter(({ line }) => into === 'checklist' || line === undefined)
      .map(({ place, heading, what }) => {
        const where = [place === '' ? '' : `${place[0]?.toUpperCase()}${place.slice(1)}`, heading].filter(
          (one) => one !== '',
        );
        return where.length === 0 ? what : `${where.join(', ')}: ${what}`;
      }) ?? []),
  ];
  return notes.length > NOTES ? [...notes.slice(0, NOTES - 1), `and ${notes.length - NOTES + 1} more.`] : notes;
}

function beyondText(count: number): string {
  const [rows, show] = [count, MAX_ROWS].map((n) => n.toLocaleString('en-GB'));
  return `The file holds ${rows} rows; a show holds ${show}. The rows beyond stay out.`;
}

export type Bringing = ReturnType<typeof useBringing>;
