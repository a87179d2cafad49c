import { deltaE2000 } from '@enfilade/colour/differences';
import type { LabD65 } from '@enfilade/colour/lab';
import { lightOf, tungstenOf } from '@enfilade/colour/lights';
import { CONFIDENCE, seenUnder, surfaceOf } from '@enfilade/colour/seen';
import { DECK } from '@enfilade/server/demo/deck';
import { deskWorksOf } from '@enfilade/shared/colour-desk';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import { LAMP_IDS, lampFrom, lampLightOf, lampNameOf, measuredLampOf } from '@enfilade/shared/lamps';
import { colourUnder, paintConfidence, paintUnder } from '@enfilade/shared/paints-under';
import type { ImageFacts } from '@enfilade/shared/protocol';
import type { Paint, Place } from '@enfilade/shared/schema';
import { partingPaintsOf, worksTurned } from '@enfilade/shared/two-lights';
import { judgementsUnder } from '@enfilade/shared/under-lamps';
import { describe, expect, test } from 'vitest';
import { spectraIn } from '../colour/tables.ts';
import { sampleShow } from './sample-show.ts';

const PICTURES: Readonly<Record<string, LabD65>> = { green: { L: 35, a: -22, b: -3 }, blue: { L: 40, a: 4, b: -34 } };

const FACTS = new Map(
  Object.entries(PICTURES).map(([sha256, lab]): [string, ImageFacts] => {
    const swatches = [{ lab, share: 1 }];
    const cell = { page: 0, index: 0 };
    const size = { widthPx: 9, heightPx: 9, opaqueShare: 1 };
    return [sha256, { sha256, ...size, body: swatches, edge: swatches, engine: 'test', cell }];
  }),
);

function hung() {
  const { documents, history } = sampleShow();
  history.perform({ name: 'picture', changes: [{ root: 'objects', key: 'oil/picture', value: 'green' }] });
  history.perform({ name: 'picture', changes: [{ root: 'objects', key: 'hanging/picture', value: 'blue' }] });
  const places = new Map<string, Place>([
    ['oil#1', ['dye:head', 2000, 1500, 0, 0]],
    ['hanging#1', ['dye:head', 4000, 1500, 0, 0]],
  ]);
  history.perform(commands.place(documents, places));
  return { documents, history, pictures: FACTS };
}

const withReflectance = (reflectance: Paint['reflectance'], lab: LabD65): Paint => ({
  name: 'measured',
  lab,
  reflectance: reflectance ?? null,
  order: 'a0',
});

describe('the lamps of a show', () => {
  test('law: every lamp has a name of its own and gives light, and is found again by its stored word', () => {
    expect(new Set(LAMP_IDS.map(lampNameOf)).size).toBe(LAMP_IDS.length);
    for (const id of LAMP_IDS) {
      expect(lampFrom(id)).toBe(id);
      expect(lampLightOf(id)).toBe(lampLightOf(id));
      expect(lampLightOf(id).power.some((power) => power > 0)).toBe(true);
    }
  });

  test('law: a measured lamp comes back from what is stored of it as the same light, within a thousandth', () => {
    const light = { name: 'Dye House spots', power: tungstenOf(2900).power };
    const stored: unknown = JSON.parse(JSON.stringify(measuredLampOf(light)));
    const lamp = lampFrom(stored);
    expect(lamp).not.toBeNull();
    if (lamp === null) return;
    expect(lampNameOf(lamp)).toBe('measured: Dye House spots');
    const again = lampLightOf(lamp);
    const most = Math.max(...light.power);
    light.power.forEach((power, i) => {
      expect(again.power[i]).toBeCloseTo(power / most, 3);
    });
    // Another copy of the same measurement is the same light, so that nothing is reckoned twice.
    expect(lampLightOf(JSON.parse(JSON.stringify(lamp)))).toBe(again);
  });

  test('law: what is no lamp is none: another word, powers too few, below nothing or none at all', () => {
    const power = Array.from({ length: 81 }, () => 0.5);
    for (const stored of [
      null,
      7,
      'candle',
      [],
      {},
      { name: 'x', power: power.slice(1) },
      { name: 'x', power: power.map(() => 0) },
      { name: 'x', power: power.map((value, i) => (i === 3 ? -1 : value)) },
      { name: 'x', power: power.map((value, i) => (i === 3 ? 'much' : value)) },
      { name: 5, power },
    ]) {
      expect(lampFrom(stored)).toBeNull();
    }
    expect(lampFrom({ name: 'x', power })).toEqual({ name: 'x', power });
  });
});

describe('paints and works under a lamp', () => {
  // CIE 13.3:1995, the test colour samples; the sum over the spectrum itself stands in tests/colour/light.test.ts.
  test('reference: a paint of known reflectance is summed under the lamp, one of known colour is within its stated confidence', () => {
    const light = tungstenOf(3000);
    for (const reflectance of spectraIn('CIE-TCS.sp')) {
      const surface = surfaceOf({ name: 'tcs', reflectance });
      const truth = seenUnder(surface, light);
      const paint = withReflectance(reflectance, surface.lab);
      expect(deltaE2000(paintUnder(paint, light), truth)).toBeLessThan(1e-6);
      expect(paintConfidence(paint)).toBe(CONFIDENCE.reflectance.words);
      const byColour = withReflectance(null, surface.lab);
      expect(deltaE2000(paintUnder(byColour, light), truth)).toBeLessThan(CONFIDENCE.likely.worst);
      expect(paintConfidence(byColour)).not.toBe(CONFIDENCE.reflectance.words);
      expect(colourUnder(surface.lab, light)).toEqual(paintUnder(byColour, light));
    }
  });

  test('law: without a lamp, and under daylight D65, paints and readings are what they are in the record', () => {
    const { documents, pictures } = hung();
    const plain = new Judgements(documents, pictures);
    const under = judgementsUnder(documents, pictures, lampLightOf('D65'));
    expect(paintUnder(documents.get('deck', 'weld') as Paint, null)).toEqual({ L: 80, a: -2, b: 60 });
    expect(under.paintOf('dye:left')).toBeNull();
    const lab = under.paintOf('dye:head')?.lab as LabD65;
    expect(deltaE2000(lab, plain.paintOf('dye:head')?.lab as LabD65)).toBeLessThan(1e-3);
    for (const pieceId of ['oil#1', 'hanging#1']) {
      expect(under.readingOf(pieceId)?.word).toBe(plain.readingOf(pieceId)?.word);
      expect(under.readingOf(pieceId)?.body.deltaE).toBeCloseTo(plain.readingOf(pieceId)?.body.deltaE ?? 0, 2);
    }
  });

  test('law: under a lamp wall, picture and frame are all seen there, follow the show, and are made once', () => {
    const { documents, history, pictures } = hung();
    const light = tungstenOf(2700);
    const under = judgementsUnder(documents, pictures, light);
    expect(judgementsUnder(documents, pictures, light)).toBe(under);
    expect(under.coloursOf('oil#1')?.body[0]?.lab).toEqual(colourUnder(PICTURES.green as LabD65, light));
    history.perform(commands.correctObject('oil', { frame: { kind: 'gilt', widthMm: 60 } }));
    const framed = under.coloursOf('oil#1');
    expect(framed?.framed).toBe(true);
    expect(framed?.edge[0]?.lab).not.toEqual(new Judgements(documents, pictures).coloursOf('oil#1')?.edge[0]?.lab);
    expect(under.coloursOf('oil#1')).toBe(framed);
    history.perform(commands.repaint('dye:head', 'weld'));
    expect(under.paintOf('dye:head')?.lab).toEqual(paintUnder(documents.get('deck', 'weld') as Paint, light));
  });
});

describe('between two lights', () => {
  test('story: of the demo’s deck, two greys that match in daylight part under the gallery’s tungsten; unmeasured paints are counted', () => {
    const documents = new ShowDocuments();
    for (const [id, paint] of Object.entries(DECK)) {
      documents.write(commands.addPaint(documents, paint, id).changes, null);
    }
    const { pairs, unjudged } = partingPaintsOf(documents, lampLightOf('D65'), lampLightOf('gallery 3000 K'));
    const greys = pairs.find(({ one, other }) => [one, other].sort().join() === 'lead-pipe,pewter');
    expect(greys).toMatchObject({ apartUnder: 'second' });
    expect(greys?.alike).toBeLessThan(2);
    expect(greys?.apart).toBeGreaterThan(3.5);
    const measured = [...documents.all('deck').values()].filter(({ reflectance }) => reflectance).length;
    expect(unjudged).toBe(documents.all('deck').size - measured);
    // The other way round the same pair parts under the first.
    const back = partingPaintsOf(documents, lampLightOf('gallery 3000 K'), lampLightOf('D65')).pairs;
    expect(back.find(({ one }) => one === greys?.one)?.apartUnder).toBe('first');
    // Between a light and itself nothing parts.
    expect(partingPaintsOf(documents, lightOf('D65'), lightOf('D65')).pairs).toEqual([]);
  });

  test('law: a work turns where its word under the second light is another, on the wall as each light shows it', () => {
    const { documents, pictures } = hung();
    const plain = new Judgements(documents, pictures);
    const works = deskWorksOf(plain, 'hung');
    const wall = { L: 35, a: -22, b: -3 };
    const far = { L: 92, a: 0, b: 4 };
    const turned = worksTurned(works, { judgements: plain, wall }, { judgements: plain, wall: far });
    expect(turned.map(({ work, from, to }) => [work.objectId, from, to])).toContainEqual(['oil', 'lost', 'carries']);
    expect(worksTurned(works, { judgements: plain, wall }, { judgements: plain, wall })).toEqual([]);
  });
});
