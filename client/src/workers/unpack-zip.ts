/** Unpacks a zip of pictures apart from the page. */
import { NotImported } from '../importers/importer.ts';
import { unpackPictures } from '../importers/picture-zip.ts';
import type { ZipAnswer } from './zip-task.ts';

addEventListener('message', async ({ data: zip }: MessageEvent<File>) => {
  const { lastModified } = zip;
  try {
    const left = await unpackPictures(zip, {
      tell: (what, share) => answer({ kind: 'progress', what, share }),
      give: (name, bytes) => answer({ kind: 'file', file: new File([bytes], name, { lastModified }) }),
    });
    answer({ kind: 'done', left });
  } catch (error) {
    const what = error instanceof NotImported ? error.message : 'It could not be unpacked to its end.';
    answer({ kind: 'failed', what });
  }
});

function answer(said: ZipAnswer): void {
  postMessage(said);
}
