/** Which page is on screen, kept in the address so that it can be sent, reloaded and gone back from. */
import type { RoomId, SurfaceId } from '@enfilade/shared/schema';
import { useSyncExternalStore } from 'react';

export type View =
  | { readonly sheet: 'room'; readonly roomId: RoomId }
  | { readonly sheet: 'wall'; readonly surface: SurfaceId }
  | { readonly sheet: 'layout' }
  | { readonly sheet: 'bring-in' }
  | { readonly sheet: 'measure'; readonly roomId: RoomId | null }
  | { readonly sheet: 'vignettes' }
  | { readonly sheet: 'paper'; readonly surface: SurfaceId | null };

export function toAddress(view: View): string {
  switch (view.sheet) {
    case 'room':
      return `#room/${view.roomId}`;
    case 'wall':
      return `#wall/${view.surface}`;
    case 'measure':
      return view.roomId === null ? '#measure' : `#measure/${view.roomId}`;
    case 'paper':
      return view.surface === null ? '#paper' : `#paper/${view.surface}`;
    default:
      return `#${view.sheet}`;
  }
}

/** The view an address names, or null when it names none (the first room is shown then). */
export function viewFrom(address: string): View | null {
  const [sheet, ...rest] = address.replace(/^#/, '').split('/');
  const about = rest.join('/');
  if (sheet === 'room' && about) return { sheet, roomId: about };
  if (sheet === 'wall' && about) return { sheet, surface: about };
  if (sheet === 'measure') return { sheet, roomId: about || null };
  if (sheet === 'paper') return { sheet, surface: about || null };
  if (sheet === 'layout' || sheet === 'bring-in' || sheet === 'vignettes') return { sheet };
  return null;
}

export function go(view: View): void {
  location.hash = toAddress(view);
}

export function useAddress(): string {
  return useSyncExternalStore(
    (tell) => {
      addEventListener('hashchange', tell);
      return () => removeEventListener('hashchange', tell);
    },
    () => location.hash,
  );
}
