/** A frozen vignette list as it was: from its own text, whatever has happened to the show since. */
import type { Version } from '@enfilade/shared/protocol';
import { lengthText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { isList, useFrozenLists } from './frozen-lists.ts';
import { rowAsFrozen } from './listed-rows.tsx';
import { VersionStamp } from './stamp-block.tsx';
import type { ListNow } from './use-list.ts';
import { VignetteTable } from './vignette-table.tsx';
import { momentText } from './vignette-words.ts';

export function FrozenPaper({ version, now }: { readonly version: Version; readonly now: ListNow }) {
  const { unit } = usePreferences();
  const [list] = useFrozenLists(version.digest);
  const newest = now.versions[0];
  const later = newest !== undefined && newest.number > version.number ? newest : undefined;
  if (!isList(list)) {
    return (
      <p className="cap vl-empty" role="status">
        {list === 'fetching' ? 'Fetching the frozen list…' : 'That list could not be fetched. Try again in a while.'}
      </p>
    );
  }
  const pieces = list.rows.reduce((sum, { form }) => sum + Object.keys(form.places).length, 0);
  return (
    <article className="vl-paper" aria-label={`Vignette list, version ${version.number}`}>
      <header className="vl-head">
        <h1>Vignette list</h1>
        <p className="vl-show">
          <span className="serif t4">{list.title}</span>
          <br />
          {list.museum}
        </p>
        <VersionStamp version={version} by={later} />
      </header>
      <VignetteTable rows={list.rows.map((row) => rowAsFrozen(row, list, (mm) => `${lengthText(mm, unit)} ${unit}`))} />
      <footer className="vl-foot">
        {list.rows.length} {list.rows.length === 1 ? 'vignette' : 'vignettes'}, {pieces}{' '}
        {pieces === 1 ? 'piece' : 'pieces'}.{' '}
        {later === undefined
          ? 'A later version makes this list void. '
          : `Void: version ${later.number} has taken its place. `}
        {list.title}, printed {momentText(new Date())}.
      </footer>
    </article>
  );
}
