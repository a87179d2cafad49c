/** A file that is being read or unpacked: how far it is, and the way to stop it. */
import type { Bringing } from './use-bringing.ts';

export function WorkingOn({ bringing }: { readonly bringing: Bringing }) {
  const { reading, unpacking, fetching, mending } = bringing;
  const work = [
    ...(reading.kind === 'reading' ? [{ ...reading, verb: 'reading', stop: bringing.stopReading }] : []),
    ...(mending === null || reading.kind !== 'read'
      ? []
      : [{ ...mending, fileName: reading.fileName, verb: 'reading again', stop: bringing.stopReading }]),
    ...(fetching === null
      ? []
      : [{ fileName: fetching, what: 'fetching', share: null, verb: 'fetching', stop: bringing.stopFetching }]),
    ...(unpacking === null ? [] : [{ ...unpacking, verb: 'unpacking', stop: bringing.stopUnpacking }]),
  ];
  return work.map(({ fileName, what, share, verb, stop }) => (
    <p key={verb} className="bi-working" role="status">
      <b className="b">{fileName}</b>
      <span>
        {what}
        {share === null || what.includes(' of ') ? '' : `, ${Math.round(share * 100)} %`}
      </span>
      <progress aria-label={`${fileName}, ${what}`} {...(share === null ? {} : { value: share })} />
      <button type="button" aria-label={`stop ${verb} ${fileName}`} onClick={stop}>
        stop {verb}
      </button>
    </p>
  ));
}
