/** The address of this page for a phone: it opens after the person's own invitation link was opened there once. */
import { useRef, useState } from 'react';
import { copyText } from '../sheets/seat-requests.ts';
import { toAddress } from '../view-address.ts';

export function PhoneLink() {
  const field = useRef<HTMLInputElement>(null);
  const [copied, setCopied] = useState(false);
  const address = `${location.origin}${location.pathname}${toAddress({ sheet: 'one-thing' })}`;
  return (
    <details className="one-phone">
      <summary>On a phone</summary>
      <p>
        Open your own invitation link on the phone once; then this address opens this page. On plain HTTP it must be the
        machine’s name in the network, not “localhost”.
      </p>
      <p className="one-phone-link">
        <input ref={field} readOnly aria-label="Address of this page" className="one-field" value={address} />
        <button
          type="button"
          className="act"
          onClick={() => void copyText(address, field.current).then((done) => setCopied(done))}
        >
          {copied ? 'Copied' : 'Copy'}
        </button>
      </p>
    </details>
  );
}
