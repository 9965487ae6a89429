import assert from 'node:assert/strict';
import { adviceOn, dutyOf } from '../../../src/report/sheet/advice';
import type { PictureReport, Severity } from '../../../src/shared/finding';
import { brokenFacts, greyFacts } from '../../book/support/facts';
import { finding, picture } from '../text/support';

const on = (...findings: [rule: string, severity: Severity][]) =>
  adviceOn(
    picture(
      'a.jpg',
      findings.map(([rule, severity]) => finding(rule, severity, '')),
    ),
    [],
  );

describe('what to do with a picture', () => {
  it('is to send it when nothing but notes is found', () => {
    const { kind, reason } = on(['untagged', 'note'], ['likely-tint', 'note']);
    assert.equal(kind, 'send');
    assert.match(reason, /test print/);
  });

  it('never says that nothing is there where a note is', () => {
    assert.match(adviceOn(picture('a.jpg'), []).reason, /^Nothing in the file/);
    assert.match(on(['untagged', 'note']).reason, /^A note is below/);
    assert.match(on(['untagged', 'note'], ['uneven-cast', 'note']).reason, /^2 notes are below/);
  });

  it('counts a note about the book that names the picture, and none about the others or all', () => {
    const note = (data: Record<string, unknown>) => ({ ...finding('mixed-profiles', 'note', ''), data });
    const groups = [{ pictures: ['a.jpg'] }, { pictures: ['b.jpg'] }];
    const title = (path: string, data: Record<string, unknown>) =>
      adviceOn(picture(path), [note(data)]).title;
    assert.equal(title('a.jpg', { groups }), 'Read the note below, then send it');
    assert.equal(title('c.jpg', { groups }), 'Send it as it is');
    assert.equal(title('a.jpg', {}), 'Send it as it is');
    assert.equal(title('a.jpg', { counted: ['a.jpg'] }), 'Send it as it is');
  });

  it('is to rename what is called wrongly, and to look at what is cut off over much of it', () => {
    assert.equal(on(['wrong-extension', 'note']).title, 'Rename it first');
    const clipped = (share: number) =>
      adviceOn(picture('a.jpg', [{ ...finding('clipped', 'note', ''), data: { share } }]), []).title;
    assert.equal(clipped(0.4), 'Look at it first');
    assert.equal(clipped(0.1), 'Read the note below, then send it');
  });

  it('follows a finding about the book that asks for this very picture', () => {
    const split = {
      ...finding('mixed-encodings', 'warning', ''),
      data: { groups: [{ pictures: ['a.jpg', 'b.jpg'] }], convert: ['a.jpg'] },
    };
    assert.equal(adviceOn(picture('a.jpg'), [split]).kind, 'convert');
    assert.equal(adviceOn(picture('b.jpg'), [split]).kind, 'send', 'the encoding to which the others go');
    const many = { ...finding('likely-tint', 'warning', ''), data: { pictures: ['b.jpg'] } };
    assert.equal(adviceOn(picture('b.jpg'), [many]).kind, 'convert');
    assert.equal(adviceOn(picture('b.jpg'), [{ ...many, severity: 'note' }]).kind, 'send');
  });

  it('names what to convert it to, for each target that asks for another', () => {
    const saved = (save: unknown, target = 'book') => ({
      ...finding('likely-tint', 'warning', ''),
      data: { save, target },
    });
    const reason = (...findings: ReturnType<typeof saved>[]) =>
      adviceOn(picture('a.jpg', findings), []).reason;
    const one = 'single-channel, once the print house says that it takes it';
    assert.match(
      reason(saved(one), saved(one, 'edition')),
      /another way\. Save it as single-channel, once the print house says that it takes it\.$/,
    );
    assert.match(
      reason(saved('rgb-neutral'), saved('black-only', 'edition')),
      / Save it as rgb-neutral for target "book" and black-only for target "edition"\.$/,
    );
    assert.doesNotMatch(reason(saved(undefined)), /Save it/);
  });

  it('has a picture with too few pixels placed smaller: nothing is wrong with its file', () => {
    const few = on(['low-resolution', 'warning']);
    assert.equal(few.title, 'Place it smaller first');
    assert.match(few.reason, /Where its original has more, export it larger\.$/);
  });

  it('offers to have another file placed where its format alone cannot be, but of colour', () => {
    const found = [finding('format-not-placed', 'error', '')];
    assert.equal(on(['format-not-placed', 'error']).places, true);
    assert.equal(adviceOn(picture('a.tif', found, { encoding: 'colour' }), []).places, undefined);
    assert.equal(on(['wrong-extension', 'note']).places, undefined);
  });

  it('says of inks out of balance no more than that a cast may be seen', () =>
    assert.match(
      on(['unbalanced-grey', 'warning']).reason,
      /out of balance as it is printed, and a cast may be seen/,
    ));

  it('names the own cause of a picture before what it shares with the book', () => {
    const shared = {
      ...finding('mixed-encodings', 'warning', ''),
      data: { groups: [], convert: ['a.jpg'], save: 'rgb-neutral' },
    };
    const tint = { ...finding('likely-tint', 'warning', ''), data: { save: 'rgb-neutral' } };
    const cast = adviceOn(picture('a.jpg', [tint], { encoding: 'rgb-toned' }), [shared]);
    assert.equal(
      cast.reason,
      'It has a colour of its own all over, and prints with it. Save it as rgb-neutral.',
    );
    const clean = (encoding: 'single-channel' | 'black-only') =>
      adviceOn(picture('a.jpg', [], { encoding }), [shared]).reason;
    assert.match(
      clean('single-channel'),
      /^It is stored as one grey channel, and others around it are not: /,
    );
    assert.match(clean('black-only'), /^It is stored as black ink alone, .* Save it as rgb-neutral\.$/);
    const look = picture('a.jpg', [finding('low-resolution', 'warning', '')]);
    assert.equal(adviceOn(look, [shared]).kind, 'convert', 'what is done first stays first');
  });

  it('asks whether a strong tone is meant before it would have it converted away', () => {
    const sepia = (rule: string, mean: number, intentStated = false) => {
      const { chroma } = greyFacts('0');
      const found = { ...finding(rule, 'warning', ''), data: { save: 'rgb-neutral' } };
      const facts = { encoding: 'rgb-toned' as const, chroma: { ...chroma!, mean } };
      return adviceOn({ ...picture('a.jpg', [found], facts), intentStated }, []);
    };
    for (const rule of ['mixed-encodings', 'likely-tint', 'residual-chroma']) {
      const { kind, title, reason } = sepia(rule, 20);
      assert.deepEqual([kind, title], ['convert', 'Is the tone meant?']);
      assert.match(reason, /"intent", "toned", in evengrey\.json\. If not, save it as rgb-neutral\.$/);
    }
    assert.equal(sepia('mixed-encodings', 4).title, 'Convert it first', 'a cast');
    assert.equal(sepia('mixed-encodings', 20, true).title, 'Convert it first', 'it was said to be grey');
    assert.equal(sepia('encoding-not-accepted', 20).title, 'Convert it first');
  });

  it('is nothing where a converted copy took its place', () => {
    const replaced = { ...picture('a.jpg'), replacedBy: 'a-grey.jpg' };
    const { kind, reason } = adviceOn(replaced, []);
    assert.equal(kind, 'leave');
    assert.match(reason, /^a-grey\.jpg was converted from it/);
  });

  it('looks at what a rule raised to a warning asks for', () =>
    assert.equal(on(['untagged', 'warning']).title, 'Look at it first'));

  it('does not call a picture’s own tone a fault of the print', () => {
    const toned = adviceOn(picture('a.jpg', [], { encoding: 'rgb-toned' }), []);
    assert.match(toned.reason, /own tone/);
    assert.doesNotMatch(toned.reason, /orders of 10/);
  });

  it('gives no odds of a tint to a picture without greys', () => {
    const reason = (encoding: 'bilevel' | 'single-channel') =>
      adviceOn(picture('a.tif', [], { space: 'grey', encoding }), []).reason;
    assert.match(reason('single-channel'), /a tint is seen in/);
    assert.doesNotMatch(reason('bilevel'), /tint/);
  });

  it('is what has to be done first when several things are wrong', () => {
    assert.equal(on(['likely-tint', 'warning'], ['unreadable', 'error']).kind, 'mend');
    assert.match(on(['likely-tint', 'warning'], ['ink-total', 'warning']).reason, /more ink/);
  });

  it('is what fails, where something else is only a warning', () => {
    const shared = {
      ...finding('mixed-encodings', 'error', ''),
      data: { groups: [], convert: ['a.jpg'], save: 'rgb-neutral' },
    };
    const cast = picture('a.jpg', [finding('likely-tint', 'warning', '')], { encoding: 'rgb-toned' });
    const duty = dutyOf(cast, [shared]);
    assert.deepEqual([duty?.severity, duty?.rule], ['error', 'mixed-encodings']);
    const raised = picture('a.jpg', [finding('untagged', 'error', ''), finding('ink-total', 'warning', '')]);
    const look = dutyOf(raised, []);
    assert.deepEqual([look?.severity, look?.rule, look?.title], ['error', 'untagged', 'Look at it first']);
  });

  it('is to match them, or them to it, where most have a tone of their own', () => {
    const among = { ...finding('mixed-encodings', 'warning', ''), data: { majority: 'rgb-toned' } };
    assert.match(
      adviceOn(picture('a.jpg', [among]), []).reason,
      / Give it the tone of its neighbours, or make all of them neutral\.$/,
    );
  });

  it('is to convert what the print house does not take', () => {
    assert.equal(on(['encoding-not-accepted', 'error']).kind, 'convert');
  });

  it('is to mend what cannot be read, whatever the rules are set to', () => {
    const broken = picture('a.jpg', [], brokenFacts('truncated'));
    assert.equal(adviceOn(broken, []).kind, 'mend');
  });

  it('is to ask where a note of the book says that much hangs on the print house, for every picture that it counts', () => {
    const question = 'It depends on the house. Ask.';
    const note = {
      ...finding('likely-tint', 'note', ''),
      data: { counted: ['a.tif', 'b.tif'], ask: question },
    };
    for (const name of ['a.tif', 'b.tif']) {
      const { kind, reason } = adviceOn(picture(name), [note]);
      assert.deepEqual([kind, reason], ['ask', `${question} Have a test print made before the run.`]);
    }
    assert.equal(adviceOn(picture('c.tif'), [note]).kind, 'send');
  });

  it('is to ask about inks as long as nobody said where they are printed', () => {
    const stored = (encoding: 'black-only' | 'rgb-neutral', targets: PictureReport['targets']) => {
      const plain = picture('a.tif');
      return adviceOn({ ...plain, targets, facts: { ...plain.facts, encoding } }, []);
    };
    const { kind, reason } = stored('black-only', []);
    assert.equal(kind, 'ask');
    assert.match(reason, /nobody said where/);
    assert.equal(stored('rgb-neutral', []).kind, 'send');
    assert.equal(stored('black-only', [{ name: 'book' } as PictureReport['targets'][number]]).kind, 'send');
  });

  it('is nothing for a picture in colour that nobody called grey', () => {
    const plain = picture('a.jpg', []);
    const colour = { ...plain, facts: { ...plain.facts, encoding: 'colour' as const } };
    assert.equal(adviceOn(colour, []).kind, 'leave');
  });
});
