/** Which addresses of the network are anybody's to reach, and which lead into somebody's own. */
import { type LookupAddress, lookup } from 'node:dns';
import { BlockList, isIP, type LookupFunction } from 'node:net';

/** What is not of the public network: IANA special-purpose registries (RFC 6890 and what was added since), and multicast. */
const SPECIAL: readonly (readonly [net: string, bits: number])[] = [
  ['0.0.0.0', 8],
  ['10.0.0.0', 8],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['172.16.0.0', 12],
  ['192.0.0.0', 24],
  ['192.0.2.0', 24],
  ['192.88.99.0', 24],
  ['192.168.0.0', 16],
  ['198.18.0.0', 15],
  ['198.51.100.0', 24],
  ['203.0.113.0', 24],
  ['224.0.0.0', 4],
  ['240.0.0.0', 4],
];
/** Within the global unicast of IPv6: tunnels that carry any IPv4 address, documentation, benchmarking. */
const SPECIAL_6: readonly (readonly [net: string, bits: number])[] = [
  ['2001::', 23],
  ['2001:db8::', 32],
  ['2002::', 16],
  ['3fff::', 20],
];

const special = new BlockList();
for (const [net, bits] of SPECIAL) special.addSubnet(net, bits, 'ipv4');
const special6 = new BlockList();
for (const [net, bits] of SPECIAL_6) special6.addSubnet(net, bits, 'ipv6');
/** All of IPv6 that is global unicast (RFC 4291); loopback, link-local, unique local and mapped IPv4 lie outside it. */
const global6 = new BlockList();
global6.addSubnet('2000::', 3, 'ipv6');

/** True of an IP address that belongs to the public network; false of every other text. */
export function isPublicAddress(address: string): boolean {
  if (isIP(address) === 4) return !special.check(address, 'ipv4');
  return isIP(address) === 6 && global6.check(address, 'ipv6') && !special6.check(address, 'ipv6');
}

export class NotPublic extends Error {}

/**
 * Resolves a name as the connection itself will use it, so that no second answer can differ from the one that was looked
 * at; a name of which any address is not public is none. Fails with NotPublic.
 */
export function lookupPublic(mayCall: (address: string) => boolean = isPublicAddress): LookupFunction {
  return (hostname, options, done) => {
    lookup(hostname, { ...options, all: true }, (error: Error | null, found: LookupAddress[]) => {
      const [first] = found ?? [];
      if (error !== null || first === undefined) done(error ?? new Error('no address'), '', 0);
      else if (!found.every(({ address }) => mayCall(address))) done(new NotPublic(hostname), '', 0);
      else if (options.all === true) done(null, found);
      else done(null, first.address, first.family);
    });
  };
}
