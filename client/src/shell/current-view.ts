/** The view on screen, and what it is called. */
import type { ShowDocuments } from '@enfilade/shared/documents';
import { LAYOUT_FLOOR, type RoomId, type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { surfaceName } from '@enfilade/shared/surface-names';
import { type View, viewFrom } from '../view-address.ts';

/** Rooms in the order they are walked through. */
export function roomsInOrder(documents: ShowDocuments): RoomId[] {
  return [...documents.all('rooms')]
    .sort(([idA, a], [idB, b]) => a.order - b.order || (idA < idB ? -1 : 1))
    .map(([id]) => id);
}

/** The view an address names; where it names none, or a room that is gone, the first room, or the measuring of one. */
export function viewOf(documents: ShowDocuments, address: string): View {
  const view = viewFrom(address);
  const known = view !== null && stands(documents, view);
  if (known) return view;
  const first = roomsInOrder(documents)[0];
  return first === undefined ? { sheet: 'measure', roomId: null } : { sheet: 'room', roomId: first };
}

function stands(documents: ShowDocuments, view: View): boolean {
  if (view.sheet === 'room') return documents.get('rooms', view.roomId) !== undefined;
  if (view.sheet === 'measure') return view.roomId === null || documents.get('rooms', view.roomId) !== undefined;
  if (view.sheet === 'wall' || (view.sheet === 'paper' && view.surface !== null)) {
    return documents.get('rooms', surfaceParts(view.surface ?? '')?.roomId ?? '') !== undefined;
  }
  return true;
}

export function viewName(documents: ShowDocuments, view: View): string {
  switch (view.sheet) {
    case 'room':
      return documents.get('rooms', view.roomId)?.name ?? 'Rooms';
    case 'wall':
      return surfaceName(documents, view.surface);
    case 'layout':
      return 'Layout floor';
    case 'bring-in':
      return 'Bring in';
    case 'take-out':
      return 'Take out';
    case 'colour':
      return 'Colour desk';
    case 'deck':
      return 'The deck';
    case 'samples':
      return 'Samples to post';
    case 'measure':
      return 'Measure';
    case 'remarks':
      return 'Remarks';
    case 'waiting':
      return 'Waiting';
    case 'history':
      return 'History';
    case 'seats':
      return 'Seats';
    case 'likenesses':
      return 'Likenesses';
    case 'loans':
      return 'Loans';
    case 'cautions':
      return 'Cautions';
    case 'paint-schedule':
      return 'Paint schedule';
    case 'vignettes':
      return 'Vignettes';
    case 'proposals':
      return 'Proposals';
    case 'collection':
      return 'The collection';
    case 'one-thing':
      return 'One thing';
    case 'paper':
      return 'Paperwork';
  }
}

/** Whether the view is drawn on the stage (the rest are sheets). */
export function isStage(view: View): boolean {
  return view.sheet === 'room' || view.sheet === 'wall' || view.sheet === 'layout';
}

/** The surface the stage is about: a faced wall or the layout floor; null on a fold-out. */
export function facedSurface(view: View): SurfaceId | null {
  return view.sheet === 'wall' ? view.surface : view.sheet === 'layout' ? LAYOUT_FLOOR : null;
}

/** The room a view is in, or null. */
export function roomOfView(view: View): RoomId | null {
  if (view.sheet === 'room') return view.roomId;
  if (view.sheet === 'wall') return surfaceParts(view.surface)?.roomId ?? null;
  return null;
}
