/** Pictures that what is brought in names by their addresses, and a person's word whether they are fetched. */
import { useId } from 'react';
import type { Bringing } from './use-bringing.ts';

export function NamedPart({ bringing }: { readonly bringing: Bringing }) {
  const id = useId();
  const { named, reading } = bringing;
  if (named.pictures === 0 || reading.kind !== 'read') return null;
  const many = named.pictures === 1 ? 'one picture' : `${named.pictures} pictures`;
  const where = named.hosts.length > 3 ? `${named.hosts.length} addresses` : named.hosts.join(', ');
  if (reading.about !== 'IIIF manifest') {
    return (
      <p className="bi-named">
        The file names {many} at {where}.{' '}
        {named.pictures === 1
          ? 'It is not fetched; bring it in as a file.'
          : 'They are not fetched; bring them in as files.'}
      </p>
    );
  }
  return (
    <p className="bi-named">
      <input
        id={id}
        type="checkbox"
        checked={bringing.fetchNamed}
        onChange={(event) => bringing.setFetchNamed(event.target.checked)}
      />
      <label htmlFor={id}>
        Fetch {many} from {where}, at the size needed. The server asks for them; no other address is called.
      </label>
    </p>
  );
}
