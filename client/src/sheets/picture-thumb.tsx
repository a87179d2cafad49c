import { useEffect, useState } from 'react';

/** Decorative: the file is named beside it. A file that is no picture shows an empty field. */
export function PictureThumb({ file }: { readonly file: File }) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(file);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  return (
    <span className="bi-thumb">
      {address === null ? null : (
        <img
          src={address}
          alt=""
          loading="lazy"
          decoding="async"
          onError={(event) => {
            event.currentTarget.hidden = true;
          }}
        />
      )}
    </span>
  );
}
