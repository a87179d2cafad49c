/** The three rooms of the show: in a row from north to south, their doorways on one axis, heads to the east. */
import type { Fixture, Opening, Room } from '@enfilade/shared/schema';

/** The axis of the doorways, from the west (foot) walls. */
export const AXIS_MM = 1950;
const DOOR = { widthMm: 1200, heightMm: 2200 } as const;

const common = { headFaces: 'east', laserMm: 1000 } as const;

export const ROOMS: Readonly<Record<'wheel' | 'dye' | 'counting', Room>> = {
  wheel: {
    ...common,
    name: 'Wheel Room',
    order: 1,
    widthMm: 8400,
    depthMm: 6200,
    heightMm: 3600,
    cornersMm: [0, 0, 0, 0],
  },
  dye: {
    ...common,
    name: 'Dye House',
    order: 2,
    widthMm: 6000,
    depthMm: 6000,
    heightMm: 3600,
    cornersMm: [0, -30, -30, 0],
  },
  counting: {
    ...common,
    name: 'Counting Room',
    order: 3,
    widthMm: 7200,
    depthMm: 5400,
    heightMm: 3200,
    cornersMm: [0, 0, 0, 0],
  },
};

/** A doorway's left edge on a left (north) wall, and on a right (south) wall of this depth. */
const onLeft = AXIS_MM - DOOR.widthMm / 2;
const onRight = (depthMm: number) => depthMm - AXIS_MM - DOOR.widthMm / 2;

export const OPENINGS: Readonly<Record<string, Opening>> = {
  entrance: { kind: 'doorway', name: 'entrance', ...DOOR, sillMm: 0, sides: [{ surface: 'wheel:left', xMm: onLeft }] },
  'wheel-dye': {
    kind: 'doorway',
    name: 'Wheel Room to Dye House',
    ...DOOR,
    sillMm: 0,
    sides: [
      { surface: 'wheel:right', xMm: onRight(6200) },
      { surface: 'dye:left', xMm: onLeft },
    ],
  },
  'dye-counting': {
    kind: 'doorway',
    name: 'Dye House to Counting Room',
    ...DOOR,
    sillMm: 0,
    sides: [
      { surface: 'dye:right', xMm: onRight(6000) },
      { surface: 'counting:left', xMm: onLeft },
    ],
  },
  'wheel-window': {
    kind: 'window',
    name: 'window on the yard',
    widthMm: 1800,
    heightMm: 1700,
    sillMm: 900,
    sides: [{ surface: 'wheel:foot', xMm: 3300 }],
  },
  'dye-window': {
    kind: 'window',
    name: 'window on the river',
    widthMm: 1400,
    heightMm: 1900,
    sillMm: 900,
    sides: [{ surface: 'dye:foot', xMm: 620 }],
  },
};

const socket = (surface: string, xMm: number, yMm = 300): Fixture => ({
  kind: 'socket',
  surface,
  xMm,
  yMm,
  widthMm: 80,
  heightMm: 80,
  clearMm: 100,
});
const thermostat = (surface: string, xMm: number): Fixture => ({
  kind: 'thermostat',
  surface,
  xMm,
  yMm: 1500,
  widthMm: 80,
  heightMm: 120,
  clearMm: 300,
});
const callPoint = (surface: string, xMm: number): Fixture => ({
  kind: 'fire call point',
  surface,
  xMm,
  yMm: 1345,
  widthMm: 110,
  heightMm: 110,
  clearMm: 200,
});
const exitSign = (surface: string, xMm: number): Fixture => ({
  kind: 'exit sign',
  surface,
  xMm,
  yMm: 2385,
  widthMm: 440,
  heightMm: 150,
  clearMm: 100,
});

export const FIXTURES: Readonly<Record<string, Fixture>> = {
  'wheel-socket-1': socket('wheel:head', 900),
  'wheel-socket-2': socket('wheel:head', 7500),
  'wheel-thermostat': thermostat('wheel:right', 5050),
  'wheel-call-point': callPoint('wheel:left', 2795),
  'wheel-exit-1': exitSign('wheel:left', AXIS_MM),
  'wheel-exit-2': exitSign('wheel:right', 6200 - AXIS_MM),
  'dye-socket-1': socket('dye:head', 520),
  'dye-socket-2': socket('dye:head', 5640),
  'dye-thermostat': thermostat('dye:head', 5830),
  'dye-call-point': callPoint('dye:left', 2795),
  'dye-exit-1': exitSign('dye:left', AXIS_MM),
  'dye-exit-2': exitSign('dye:right', 6000 - AXIS_MM),
  'counting-socket-1': socket('counting:head', 600),
  'counting-socket-2': socket('counting:head', 6600),
  'counting-thermostat': thermostat('counting:head', 6900),
  'counting-call-point': callPoint('counting:left', 2795),
  'counting-exit': exitSign('counting:left', AXIS_MM),
};
