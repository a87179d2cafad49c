/** What remarks are about, and when, in words. */
import type { Judgements } from '@enfilade/shared/judgements';
import { movesOf } from '@enfilade/shared/proposal-moves';
import { LAYOUT_FLOOR, objectOfPiece } from '@enfilade/shared/schema';
import { surfaceName } from '@enfilade/shared/surface-names';
import type { RemarkAbout } from '@enfilade/shared/talk';
import { lengthText } from '@enfilade/space/lengths';
import type { Unit } from '../preferences.ts';
import { roomsInOrder } from '../shell/current-view.ts';
import { THE_HANG, type View } from '../view-address.ts';
import { aboutName } from './about-name.ts';
import { surfacesTouched } from './open-proposals.ts';

/** 'The valley from Tallow Hill', 'Dye House, east wall', 'a spot on Dye House, east wall', 'the proposal Broom in flower'. */
export function aboutText(judgements: Judgements, about: RemarkAbout, unit: Unit): string {
  if (about.kind !== 'spot') return aboutName(judgements, about);
  const [x, y] = [lengthText(about.xMm, unit), lengthText(about.yMm, unit)];
  const name = surfaceName(judgements.documents, about.surface);
  const inPlan = about.surface.endsWith(':floor') || about.surface.endsWith(':ceiling');
  return inPlan ? `${name}, ${x} from the left wall, ${y} from the entrance wall` : `${name}, at ${x} across, ${y} up`;
}

/** Where one goes to see what a remark is about; null where it is nowhere now. */
export function wayTo(
  judgements: Judgements,
  about: RemarkAbout,
): {
  readonly view: View;
  readonly laid?: typeof THE_HANG | { kind: 'proposal'; id: string };
  readonly pieces: readonly string[];
} | null {
  const at = (surface: string | null, pieces: readonly string[] = []) => {
    const view = surface === null ? null : viewOfSurface(surface);
    return view === null ? null : { view, laid: THE_HANG, pieces };
  };
  switch (about.kind) {
    case 'piece': {
      // What has no place yet has its card all the same.
      const there = judgements.documents.get('objects', objectOfPiece(about.pieceId)) !== undefined;
      return at(judgements.where.surfaceOf(about.pieceId) ?? (there ? LAYOUT_FLOOR : null), [about.pieceId]);
    }
    case 'vignette': {
      const members = [...judgements.documents.all('memberOf')].flatMap(([id, of]) =>
        of === about.vignetteId ? [id] : [],
      );
      const placed = members.map((id) => judgements.where.surfaceOf(id)).find((surface) => surface !== null);
      return at(placed ?? null, members);
    }
    case 'wall':
    case 'spot':
      return at(about.surface);
    case 'paint': {
      const painted = [...judgements.documents.all('paints')].find(([, id]) => id === about.paintId);
      return at(painted?.[0] ?? null);
    }
    case 'proposal': {
      const id = about.proposalId;
      if (judgements.documents.get('proposals', id) === undefined) return null;
      const [touched] = surfacesTouched(judgements, movesOf(judgements.documents, id));
      const [first] = roomsInOrder(judgements.documents);
      const view = touched === undefined ? null : viewOfSurface(touched);
      const inRoom: View = first === undefined ? { sheet: 'layout' } : { sheet: 'room', roomId: first };
      return { view: view ?? inRoom, laid: { kind: 'proposal', id }, pieces: [] };
    }
  }
}

/** The view a surface is faced in: a wall or ceiling alone, a floor on its room's fold-out. */
export function viewOfSurface(surface: string): View | null {
  if (surface === 'layout') return { sheet: 'layout' };
  const [roomId, side] = surface.split(':');
  if (!roomId || !side) return null;
  return side === 'floor' ? { sheet: 'room', roomId } : { sheet: 'wall', surface };
}

/** '08:51' today, '9 May, 08:51' before. */
export function whenText(iso: string, now = new Date()): string {
  const date = new Date(iso);
  const time = date.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  if (date.toDateString() === now.toDateString()) return time;
  return `${date.toLocaleDateString('en-GB', { day: 'numeric', month: 'short' })}, ${time}`;
}
