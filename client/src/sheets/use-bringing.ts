/** What is being brought in: files, answers and choices, until it is written as one act or put back. */
import { answeredRow, type ChecklistRow, type RowAnswer } from '@enfilade/shared/checklist-reading';
import * as commands from '@enfilade/shared/commands';
import { pictureRecordsFrom, recordsInFrom } from '@enfilade/shared/records-in';
import { useMemo, useRef, useState } from 'react';
import { act } from '../cards/acting.ts';
import { say } from '../shell/live-region.tsx';
import { useHistory, useRoots, useShow } from '../sync/hooks.ts';
import type { ChecklistReader } from '../workers/checklist-reader.ts';
import { pictureChoices, picturesByTarget, targetsOf } from './picture-choices.ts';
import { type SendingState, sendPictures } from './sending.ts';

export interface Done {
  readonly name: string;
  readonly records: number;
  readonly added: number;
  readonly updated: number;
  readonly pictures: number;
  readonly beyond: number;
  /** Pictures that found no object. */
  readonly left: number;
  readonly refused: readonly { readonly fileName: string; readonly what: string }[];
}

const PICTURE = /\.(jpe?g|png|webp|tiff?|gif|bmp|hei[cf]|avif)$/i;
const CHECKLIST = /\.(csv|tsv|txt)$/i;
const NONE: readonly ChecklistRow[] = [];

export function useBringing(reader: ChecklistReader) {
  const show = useShow();
  const { documents, history } = show;
  const { undoable } = useHistory();
  const version = useRoots('objects');
  const [files, setFiles] = useState<readonly File[]>([]);
  const [ignored, setIgnored] = useState<readonly string[]>([]);
  const [answers, setAnswers] = useState<ReadonlyMap<string, RowAnswer>>(new Map());
  const [byHand, setByHand] = useState<ReadonlyMap<string, string>>(new Map());
  const [sending, setSending] = useState<SendingState | null>(null);
  const [done, setDone] = useState<Done | null>(null);
  const hashes = useRef(new Map<File, string>());
  const stop = useRef<AbortController | null>(null);

  const reading = reader.state.kind === 'read' ? reader.state.reading : null;
  const rows = useMemo(() => {
    if (reading === null) return NONE;
    if (answers.size === 0) return reading.rows;
    return reading.rows.flatMap((row) => {
      const given = row.waits.flatMap((_, index) => answers.get(`${row.line}/${index}`) ?? []);
      const answered = answeredRow(row, given);
      return answered === null ? [] : [answered];
    });
  }, [reading, answers]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for the objects
  const targets = useMemo(() => targetsOf(rows, documents.all('objects')), [rows, documents, version]);
  const choices = useMemo(
    () =>
      pictureChoices(
        files.map(({ name }) => name),
        targets,
        rows,
        byHand,
      ),
    [files, targets, rows, byHand],
  );

  const take = (chosen: readonly File[]): void => {
    const pictures = chosen.filter(({ name, type }) => PICTURE.test(name) || type.startsWith('image/'));
    const checklists = chosen.filter(({ name }) => CHECKLIST.test(name));
    const checklist = checklists.at(-1);
    if (checklist !== undefined) {
      setAnswers(new Map());
      reader.read(checklist);
    }
    const known = new Set(files.map(({ name, size }) => `${name} ${size}`));
    setFiles([...files, ...pictures.filter(({ name, size }) => !known.has(`${name} ${size}`))]);
    const rest = chosen.filter((file) => !pictures.includes(file) && !checklists.includes(file));
    setIgnored([
      ...rest.map(({ name }) => `${name} is neither a CSV nor a picture; it stays out.`),
      ...checklists.slice(0, -1).map(({ name }) => `${name} stays out: one checklist at a time.`),
    ]);
  };
  const begin = (): void => {
    stop.current?.abort();
    reader.forget();
    setFiles([]);
    setIgnored([]);
    setAnswers(new Map());
    setByHand(new Map());
    setSending(null);
    setDone(null);
    hashes.current.clear();
  };
  const bringIn = async (): Promise<void> => {
    const going = choices.flatMap(({ target }, index) => (target === null ? [] : [files[index] as File]));
    const control = new AbortController();
    stop.current = control;
    try {
      const sent = await sendPictures(show.pictures, going, hashes.current, control.signal, setSending);
      const hashOf = new Map([...sent.hashes].map(([file, sha256]) => [file.name, sha256]));
      const byTarget = picturesByTarget(choices, (name) => hashOf.get(name));
      const byLine = new Map<number, readonly string[]>();
      const byObject = new Map<string, readonly string[]>();
      for (const { key, line, objectId } of targets) {
        const pictures = byTarget.get(key);
        if (pictures === undefined) continue;
        if (line !== null) byLine.set(line, pictures);
        else if (objectId !== null) byObject.set(objectId, pictures);
      }
      const incoming = recordsInFrom(documents, rows, byLine);
      const pictured = pictureRecordsFrom(documents, byObject);
      const records = [...incoming.records, ...pictured];
      setSending(null);
      if (records.length === 0) {
        say('Nothing was brought in.');
        setIgnored(sent.refused.map(({ fileName, what }) => `${fileName}: ${what}`));
        return;
      }
      const made = commands.addObjects(documents, records);
      if (!act(show, made, `${records.length} records are in`)) return;
      setDone({
        name: made.name,
        records: records.length,
        added: incoming.added,
        updated: incoming.updated + pictured.length,
        pictures: [...byTarget.values()].flat().length,
        beyond: incoming.beyond.length,
        left: files.length - going.length,
        refused: sent.refused,
      });
    } catch {
      setSending(null);
      say('Stopped. Nothing was brought in; it can be begun again.');
    }
  };
  const putBack = (): void => {
    history.undo();
    say('All put back.');
    begin();
  };
  const notes = [
    ...ignored,
    ...(reading?.notes.map(({ line, what, heading }) =>
      line === 1 ? `${heading === '' ? '' : `${heading}: `}${what}` : `Row ${line}: ${what}`,
    ) ?? []),
  ];
  return {
    rows,
    files,
    targets,
    choices,
    answers,
    answer: (key: string, given: RowAnswer): void => setAnswers(new Map([...answers, [key, given]])),
    chooseTarget: (fileName: string, key: string | null): void => {
      const next = new Map(byHand);
      if (key === null) next.delete(fileName);
      else next.set(fileName, key);
      setByHand(next);
    },
    notes: notes.length > 12 ? [...notes.slice(0, 11), `and ${notes.length - 11} more.`] : notes,
    sending,
    done,
    take,
    begin,
    bringIn,
    stop: () => stop.current?.abort(),
    putBack,
    mayPutBack: done !== null && undoable === done.name,
  };
}

export type Bringing = ReturnType<typeof useBringing>;
