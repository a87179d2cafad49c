/** A IIIF manifest by its address: the server fetches it, this page never calls it. */
import { type FormEvent, useId, useState } from 'react';

export function AddressChoice({ take }: { readonly take: (address: string) => void }) {
  const id = useId();
  const [address, setAddress] = useState('');
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (address.trim() !== '') take(address.trim());
  };
  return (
    <form className="bi-address" onSubmit={submit}>
      <label htmlFor={id}>or a IIIF manifest’s address</label>
      <input
        id={id}
        type="url"
        inputMode="url"
        placeholder="https://"
        value={address}
        onChange={(event) => setAddress(event.target.value)}
      />
      <button type="submit" className="act" disabled={address.trim() === ''}>
        Fetch it
      </button>
    </form>
  );
}
