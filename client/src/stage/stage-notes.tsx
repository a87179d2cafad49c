/** What is written on the board round the drawing and can be pressed: it keeps its size and follows the drawing. */
import { useCallback, useEffect, useRef, useSyncExternalStore } from 'react';
import { vignettesOf } from '../cards/vignettes-on.ts';
import { trial, useStore } from '../selection.ts';
import { usePictures, useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { bracketsOf } from './brackets.ts';
import type { StageMachine } from './stage-machine.ts';
import { VignetteBrackets } from './vignette-brackets.tsx';
import { WallCaptions } from './wall-captions.tsx';
import './stage-notes.css';

/** Notes keep up with a scale at once, and with what changes in the show within this (ms). */
const REST_MS = 150;

export function StageNotes({ machine }: { readonly machine: StageMachine }) {
  const { judgements } = useShow();
  useRestingRoots(
    REST_MS,
    'vignettes',
    'memberOf',
    'places',
    'pieces',
    'objects',
    'signatures',
    'settings',
    'proposals',
    'proposed',
  );
  usePictures();
  useStore(trial);
  const scene = useStore(machine.sceneNow);
  const scale = useCameraOf(machine, 'scale');
  const board = useRef<HTMLDivElement>(null);

  // A pan moves the whole board of notes, and draws none of them again.
  const drawn = scene !== null && scene.frame.sheet !== 'layout';
  useEffect(() => {
    if (!drawn) return;
    const follow = () => {
      const { x, y } = machine.shownAt.get();
      if (board.current !== null) board.current.style.transform = `translate(${x}px, ${y}px)`;
    };
    follow();
    return machine.shownAt.subscribe(follow);
  }, [machine, drawn]);

  if (scene === null || scene.frame.sheet === 'layout') return null;
  const vignettes = vignettesOf(judgements);
  const numbered = new Map(vignettes.map((here, index) => [here.id, { ...here, number: index + 1 }]));
  // Not over the caption's column; under the card's.
  const clear = Math.max(0, machine.insets.left - 12);
  return (
    <div className="stage-notes" style={{ left: clear, right: 0 }}>
      <div style={{ position: 'absolute', left: -clear, top: 0 }}>
        <div ref={board} className="stage-notes-board">
          {scene.frame.sheet === 'room' ? <WallCaptions machine={machine} scene={scene} scale={scale} /> : null}
          <VignetteBrackets
            machine={machine}
            scene={scene}
            scale={scale}
            brackets={bracketsOf(scene, vignettes)}
            vignettes={numbered}
          />
        </div>
      </div>
    </div>
  );
}

function useCameraOf(machine: StageMachine, key: 'scale' | 'x' | 'y'): number {
  const subscribe = useCallback((tell: () => void) => machine.shownAt.subscribe(tell), [machine]);
  return useSyncExternalStore(subscribe, () => machine.shownAt.get()[key]);
}
