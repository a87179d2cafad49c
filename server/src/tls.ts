/**
 * A certificate for a gallery's own network, where a public one is not to be had: made once, kept in the data folder,
 * and trusted on each tablet by hand. Without TLS a browser keeps nothing for work without a connection.
 */
import { X509Certificate } from 'node:crypto';
import { chmod, mkdir, readFile, writeFile } from 'node:fs/promises';
import { hostname, networkInterfaces } from 'node:os';
import { join } from 'node:path';

export interface Certificate {
  /** PEM. */
  readonly cert: string;
  readonly key: string;
  /** Made here, so that devices must be told to trust it. */
  readonly own: boolean;
}

/** Devices refuse longer ones: 397 days, less one for clocks that differ. */
const DAYS = 396;
/** Made anew when it has less than this left. */
const DAYS_LEFT = 30;

/** Names and addresses this machine is reached by on its networks. */
export function namesOfThisMachine(): { readonly names: string[]; readonly addresses: string[] } {
  const addresses = Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ family, address }) => family === 'IPv4' || address === '::1')
    .map(({ address }) => address);
  const name = hostname();
  return { names: [...new Set(['localhost', name, name.includes('.') ? name : `${name}.local`])], addresses };
}

/** @throws Error when the files cannot be read or are no pair. */
export async function certificateFrom(certFile: string, keyFile: string): Promise<Certificate> {
  const [cert, key] = await Promise.all([readFile(certFile, 'utf8'), readFile(keyFile, 'utf8')]);
  // Throws where it is none; a key of another certificate is found when the server begins to listen.
  new X509Certificate(cert);
  return { cert, key, own: false };
}

/** The one kept in the data folder, where it is still good for this machine; else a new one. */
export async function ownCertificate(dataDirectory: string, now = new Date()): Promise<Certificate> {
  const folder = join(dataDirectory, 'tls');
  const [certFile, keyFile] = [join(folder, 'certificate.pem'), join(folder, 'key.pem')];
  const kept = await Promise.all([readFile(certFile, 'utf8'), readFile(keyFile, 'utf8')]).catch(() => null);
  if (kept !== null && isGoodHere(kept[0], now)) return { cert: kept[0], key: kept[1], own: true };
  const { names, addresses } = namesOfThisMachine();
  const until = new Date(now.getTime() + DAYS * 86_400_000);
  const { generate } = await import('selfsigned');
  const made = await generate([{ name: 'commonName', value: `Enfilade on ${hostname()}` }], {
    keyType: 'ec',
    curve: 'P-256',
    algorithm: 'sha256',
    notBeforeDate: new Date(now.getTime() - 86_400_000),
    notAfterDate: until,
    extensions: [
      // One certificate that is both: a device trusts it as an authority, and it speaks for nobody but itself.
      { name: 'basicConstraints', cA: true, pathLenConstraint: 0, critical: true },
      { name: 'keyUsage', digitalSignature: true, keyCertSign: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: [
          ...names.map((value) => ({ type: 2 as const, value })),
          ...addresses.map((ip) => ({ type: 7 as const, ip })),
        ],
      },
    ],
  });
  await mkdir(folder, { recursive: true, mode: 0o700 });
  await writeFile(keyFile, made.private, { mode: 0o600 });
  await chmod(keyFile, 0o600);
  await writeFile(certFile, made.cert);
  return { cert: made.cert, key: made.private, own: true };
}

function isGoodHere(pem: string, now: Date): boolean {
  try {
    const certificate = new X509Certificate(pem);
    const { names, addresses } = namesOfThisMachine();
    return (
      Date.parse(certificate.validTo) - now.getTime() > DAYS_LEFT * 86_400_000 &&
      names.every((name) => certificate.checkHost(name) !== undefined) &&
      addresses.every((address) => certificate.checkIP(address) !== undefined)
    );
  } catch {
    return false;
  }
}
