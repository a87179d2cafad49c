import { ActHistory } from '@enfilade/shared/acts';
import { ShowDocuments } from '@enfilade/shared/documents';
import { DOCUMENT_NAMES, mayInvite, mayRead, maySeat, mayWrite, powersOf, ROLES } from '@enfilade/shared/seats';
import { personNameFrom } from '@enfilade/shared/seats-page';
import { expect, test } from 'vitest';

test('law: nobody gives a power they have not got, and only a lead makes leads', () => {
  for (const by of ROLES) {
    for (const role of ROLES) {
      if (!maySeat(by, role)) continue;
      expect(mayInvite(by)).toBe(true);
      for (const power of powersOf(role)) expect(powersOf(by)).toContain(power);
    }
  }
  expect(ROLES.filter((by) => maySeat(by, 'lead'))).toEqual(['lead']);
  expect(ROLES.filter((by) => maySeat(by, 'viewer'))).toEqual(['lead', 'curator']);
});

test('law: whoever writes a document reads it; “proposes only” takes the hang from the artist and nothing from anybody else', () => {
  for (const role of ROLES) {
    for (const name of DOCUMENT_NAMES) {
      if (mayWrite(role, name)) expect(mayRead(role, name)).toBe(true);
      const open = mayWrite(role, name, { artistProposesOnly: false });
      const bound = mayWrite(role, name, { artistProposesOnly: true });
      expect(open).toBe(mayWrite(role, name));
      expect(bound).toBe(open && !(role === 'guest artist' && name === 'hang'));
    }
  }
});

test('story: what one may no longer change is not taken back either', () => {
  const documents = new ShowDocuments();
  let open = true;
  const history = new ActHistory(documents, 'isolde', (document) => document !== 'hang' || open);
  history.perform({ name: 'repaint', changes: [{ root: 'paints', key: 'dye:head', value: 'weld' }] });
  open = false;
  expect(history.undo()).toEqual({ name: 'repaint', done: 0, of: 1 });
  expect(documents.stored('paints', 'dye:head')).toBe('weld');
  open = true;
  history.redo();
  history.undo();
  expect(documents.stored('paints', 'dye:head')).toBeUndefined();
});

test('law: a name is one line of words, and nothing else', () => {
  expect(personNameFrom('  Ama \n\t Trevithian\u0000\u202e ')).toBe('Ama Trevithian');
  expect(personNameFrom('\u200b \n')).toBeNull();
  expect(personNameFrom('x'.repeat(500))).toHaveLength(80);
  expect(personNameFrom('Isolde Fennimarsh')).toBe('Isolde Fennimarsh');
});
