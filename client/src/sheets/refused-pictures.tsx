/** Pictures that were sent and stayed out, each with why. */
interface RefusedPicturesProps {
  readonly refused: readonly { readonly fileName: string; readonly what: string }[];
}

export function RefusedPictures({ refused }: RefusedPicturesProps) {
  if (refused.length === 0) return null;
  return (
    <section className="bi-refused">
      <h2>{refused.length === 1 ? 'One picture' : `${refused.length} pictures`} stayed out; the rest went in</h2>
      <ul>
        {refused.map(({ fileName, what }) => (
          <li key={fileName}>
            {what.includes(fileName) ? null : <b className="b">{fileName} </b>}
            {what}
          </li>
        ))}
      </ul>
    </section>
  );
}
