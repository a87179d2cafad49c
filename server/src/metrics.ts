/** What the server counts, as plain text lines: `name value`. */
import type { Images } from './images.ts';
import type { Sessions } from './sessions.ts';
import type { SocketCounts } from './socket.ts';

export function metricsText(house: { sessions: Sessions; images: Images; counts: SocketCounts }): string {
  const { sessions, images, counts } = house;
  const lines: [string, number][] = [
    ['enfilade_uptime_seconds', Math.round(process.uptime())],
    ['enfilade_resident_bytes', process.memoryUsage.rss()],
    ['enfilade_read_only', sessions.commit.readOnly === null ? 0 : 1],
    ['enfilade_sockets', sessions.sockets.size],
    ['enfilade_frames_in_total', counts.framesIn],
    ['enfilade_frames_out_total', counts.framesOut],
    ['enfilade_sockets_closed_for_fault_total', counts.closedForFault],
    ['enfilade_commits_total', sessions.commits],
    ['enfilade_updates_logged_total', sessions.updates],
    ['enfilade_compactions_total', sessions.compactions],
    ['enfilade_pictures', images.facts().length],
  ];
  for (const [name, session] of sessions.byName) {
    lines.push([`enfilade_log_updates{document="${name}"}`, session.updatesSinceSnapshot]);
    lines.push([`enfilade_document_bytes{document="${name}"}`, session.snapshotBytes + session.bytesSinceSnapshot]);
  }
  return `${lines.map(([name, value]) => `${name} ${value}`).join('\n')}\n`;
}
