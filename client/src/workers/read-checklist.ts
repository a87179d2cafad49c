/** Reads a checklist apart from the page: a file to a table to rows. The table stays here, so that a mended heading is quick. */
import type { ChecklistField } from '@enfilade/records/checklist-headings';
import { checklistFromTable, sourceCellsOf } from '@enfilade/shared/checklist-reading';
import { type Imported, NotImported } from '../importers/importer.ts';
import { importFile } from '../importers/importers.ts';
import type { ChecklistAnswer, ChecklistQuestion } from './checklist-task.ts';

let imported: Imported | null = null;
let mapping: readonly (ChecklistField | null)[] = [];

addEventListener('message', async ({ data }: MessageEvent<ChecklistQuestion>) => {
  try {
    if (data.kind === 'read') {
      imported = await importFile(data.file, data.file.name, {
        sheet: data.sheet,
        tell: (what, share) => answer({ kind: 'progress', what, share }),
      });
      answerRows(imported);
    } else if (imported !== null && data.kind === 'mend') {
      answerRows(imported, data.mapping);
    } else if (imported !== null && data.kind === 'source') {
      const cells = sourceCellsOf(imported.table, mapping, data.line);
      answer({ kind: 'source', line: data.line, cells });
    }
  } catch (error) {
    const what = error instanceof NotImported ? error.message : 'It could not be read to its end.';
    answer({ kind: 'failed', what: `${what} Nothing of it was brought in.` });
  }
});

function answerRows(from: Imported, mended?: readonly (ChecklistField | null)[]): void {
  const table = mended === undefined ? from.table : (from.mended?.(mended) ?? from.table);
  const reading = checklistFromTable(table, mended);
  mapping = reading.mapping;
  imported = { ...from, table };
  answer({ kind: 'read', reading, about: from.about, sheets: from.sheets, sheet: from.sheet });
}

function answer(said: ChecklistAnswer): void {
  postMessage(said);
}
