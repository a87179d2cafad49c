/** Along the foot: how many rows and pictures go into the collection, and the one press that sends them. */
import { ReadingFoot } from './reading-foot.tsx';
import type { Bringing } from './use-bringing.ts';
import type { Collecting } from './use-collecting.ts';

interface CollectionFootProps {
  readonly bringing: Bringing;
  readonly collecting: Collecting;
}

export function CollectionFoot({ bringing, collecting }: CollectionFootProps) {
  const { sending } = bringing;
  if (sending !== null) return <ReadingFoot sending={sending} stop={bringing.stop} />;
  const rows = collecting.collection?.going ?? 0;
  const pictures = collecting.goingPictures;
  const parts = [...counted(rows, 'record'), ...counted(pictures, 'picture')];
  return (
    <footer className="bi-foot">
      <div>
        <h2>{parts.length === 0 ? 'Nothing to bring in yet' : 'Nothing is written yet'}</h2>
        <p className="t1">
          {parts.length === 0
            ? ''
            : `${parts.join(' and ')} ${rows + pictures === 1 ? 'goes' : 'go'} into the collection. A number that is there is brought up to date; all of it can be taken back.`}
        </p>
      </div>
      <div />
      <p className="bi-commands">
        <button type="button" className="act" onClick={bringing.begin}>
          Put all back
        </button>
        <button
          type="button"
          className="act main"
          disabled={parts.length === 0 || collecting.matching || bringing.reading.kind === 'reading'}
          onClick={() => void collecting.bringIn()}
        >
          Bring {(rows > 0 ? rows : pictures).toLocaleString('en-GB')} into the collection
        </button>
      </p>
    </footer>
  );
}

function counted(count: number, what: string): string[] {
  if (count === 0) return [];
  return [`${count.toLocaleString('en-GB')} ${what}${count === 1 ? '' : 's'}`];
}
