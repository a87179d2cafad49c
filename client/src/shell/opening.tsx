/** While a show is opening: what has arrived so far, in words. */
import { useEffect, useState } from 'react';
import { useRoots, useShow } from '../sync/hooks.ts';

export function Opening() {
  const { documents } = useShow();
  useRoots('rooms', 'objects', 'places');
  const [slow, setSlow] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setSlow(true), 5000);
    return () => clearTimeout(timer);
  }, []);
  const count = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;
  const arrived = [
    [documents.all('rooms').size, 'room', 'rooms'],
    [documents.all('objects').size, 'record', 'records'],
    [documents.all('places').size, 'piece placed', 'pieces placed'],
  ] as const;
  const here = arrived.filter(([n]) => n > 0).map(([n, one, many]) => count(n, one, many));
  return (
    <main className="opening" aria-busy="true">
      <h1>Opening the show…</h1>
      <p role="status">{here.length === 0 ? 'Nothing has arrived yet.' : `Arrived: ${here.join(', ')}.`}</p>
      {slow ? <p>It takes longer than usual. The page goes on asking; nothing is lost.</p> : null}
    </main>
  );
}
