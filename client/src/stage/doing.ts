/** What a hand on the stage is doing. */
import type { DragSession } from './drag-session.ts';
import type { SceneItem } from './scene-items.ts';

export type Doing =
  | {
      readonly kind: 'press';
      readonly item: SceneItem | null;
      readonly shift: boolean;
      readonly x: number;
      readonly y: number;
    }
  | { readonly kind: 'pan' }
  | { readonly kind: 'carry'; readonly session: DragSession }
  | { readonly kind: 'catch'; readonly x: number; readonly y: number }
  | { readonly kind: 'pinch' };
