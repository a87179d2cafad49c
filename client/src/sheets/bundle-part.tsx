/** A whole show that was chosen: taken in by a lead, into a show in which nothing stands yet. */
import { useShow } from '../sync/hooks.ts';
import type { Bringing } from './use-bringing.ts';

export function BundlePart({ bringing }: { readonly bringing: Bringing }) {
  const { me, documents } = useShow();
  const { bundle } = bringing;
  if (bundle === null) return null;
  if (bundle.kind === 'in') {
    const { title, records, pictures, refused } = bundle.answer;
    return (
      <section className="bi-bundle" role="status">
        <h2>“{title}” is in</h2>
        <p className="cap">
          {records} records, {pictures} pictures, with its rooms, hang, remarks and kept states.
        </p>
        <ul>
          {refused.map(({ fileName, what }) => (
            <li key={fileName}>{what}</li>
          ))}
        </ul>
      </section>
    );
  }
  const empty = documents.all('objects').size + documents.all('rooms').size + documents.all('places').size === 0;
  const why =
    me.person.role !== 'lead'
      ? 'A lead takes it in: it writes into every part of the show.'
      : empty
        ? null
        : 'This show is not empty. A whole show comes into an empty one: a server started with --empty on a folder of its own.';
  return (
    <section className="bi-bundle" aria-label="A whole show">
      <h2>{bundle.file.name} is a whole show</h2>
      <p className="cap">
        {why ?? 'Its records, rooms, hang, remarks, kept states and pictures come in as they were taken out.'}
      </p>
      {bundle.kind === 'failed' ? <p role="alert">{bundle.what}</p> : null}
      {bundle.kind === 'sending' ? (
        <p role="status">
          taking it in{' '}
          <button type="button" onClick={bringing.stopBundle}>
            stop
          </button>
        </p>
      ) : (
        <p className="bi-commands">
          {why === null ? (
            <button type="button" className="act main" onClick={bringing.takeBundle}>
              Take the whole show in
            </button>
          ) : null}
          <button type="button" className="act" onClick={bringing.begin}>
            Put it back
          </button>
        </p>
      )}
    </section>
  );
}
