/** The photograph of the one thing: taken with this device's camera or chosen, and shown before it is sent. */
import { useEffect, useMemo } from 'react';

export function Photograph({ file, take }: { readonly file: File | null; readonly take: (file: File | null) => void }) {
  const url = useMemo(() => (file === null ? null : URL.createObjectURL(file)), [file]);
  useEffect(() => {
    return () => {
      if (url !== null) URL.revokeObjectURL(url);
    };
  }, [url]);
  const [first, further] = file === null ? ['Photograph it', null] : ['Photograph it again', file.name];
  return (
    <div className="one-photograph">
      {url === null ? null : <img src={url} alt={`The photograph, ${further}`} />}
      <div className="one-photograph-ways">
        <span className="one-chooser">
          <input
            type="file"
            accept="image/*"
            capture="environment"
            aria-label={first}
            onChange={(event) => {
              const [chosen] = event.target.files ?? [];
              event.target.value = '';
              if (chosen !== undefined) take(chosen);
            }}
          />
          <span className="act" aria-hidden="true">
            {first}
          </span>
        </span>
        {file === null ? null : (
          <button type="button" onClick={() => take(null)}>
            without a photograph
          </button>
        )}
      </div>
    </div>
  );
}
