/** Pictures that could not be read, each with its fault; `children` says how many. */
import type { ReactNode } from 'react';
import type { Bringing } from './use-bringing.ts';

interface DamagedPicturesProps {
  readonly damaged: Bringing['damaged'];
  readonly children: ReactNode;
}

export function DamagedPictures({ damaged, children }: DamagedPicturesProps) {
  if (damaged.length === 0) return null;
  return (
    <div className="bi-damaged" role="status">
      <p>{children}</p>
      <ul>
        {damaged.map(({ id, file, fault }) => (
          <li key={id}>
            <span>
              <b className="b">{file.name}</b> {fault}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
