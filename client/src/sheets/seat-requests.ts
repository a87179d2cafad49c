/** What the Seats page asks of the server, and the words it answers with. */
import type { Refusal } from '@enfilade/shared/protocol';
import type { SeatEntry } from '@enfilade/shared/seats-page';

export type Asked<T> = { readonly ok: true; readonly body: T } | { readonly ok: false; readonly what: string };

const UNREACHED = 'No connection to the server. Nothing was changed; try again when it is back.';

/** `base`: the seat's path, `/seat/<id>`. */
export async function fetchSeats(base: string): Promise<Asked<readonly SeatEntry[]>> {
  return ask(() => fetch(`${base}/seats`));
}

export async function askOf<T>(base: string, act: string, body: unknown): Promise<Asked<T>> {
  const headers = { 'content-type': 'application/json' };
  return ask(() => fetch(`${base}/acts/${act}`, { method: 'POST', headers, body: JSON.stringify(body) }));
}

async function ask<T>(send: () => Promise<Response>): Promise<Asked<T>> {
  try {
    const answer = await send();
    const body: unknown = await answer.json();
    return answer.ok ? { ok: true, body: body as T } : { ok: false, what: (body as Refusal).what };
  } catch {
    return { ok: false, what: UNREACHED };
  }
}

/** Whether the text is on the clipboard now; without a secure context the old way is tried. */
export async function copyText(text: string, field: HTMLInputElement | null): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    field?.select();
    return document.execCommand('copy');
  }
}
