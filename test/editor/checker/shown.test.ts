import assert from 'node:assert/strict';
import { entriesOf, findingsByPicture, shown } from '../../../src/editor/checker/shown';
import type { RemedyEncoding } from '../../../src/shared/remedy';
import { finding, picture, report } from '../../report/text/support';

const toNeutral = () => 'rgb-neutral' as const;
const found = [finding('residual-chroma', 'warning', 'A stain.'), finding('untagged', 'note', 'No profile.')];

describe('findings as an editor shows them', () => {
  it('say behind the message what a forecast rests on', () => {
    assert.equal(shown(finding('untagged', 'note', 'No profile.')).message, 'No profile.');
    const { message } = shown({
      ...finding('likely-tint', 'note', 'It leans.'),
      data: { basis: 'generic' },
    });
    assert.match(message, /^It leans\. [A-Z].*\.$/);
  });

  it('know where a tone may be meant of which nobody said so', () => {
    const tint = [finding('likely-tint', 'warning', '')];
    const toned = picture('a.png', tint, { encoding: 'rgb-toned' });
    const [one] = findingsByPicture([toned], toNeutral).get('a.png')!;
    assert.equal(one.meant, 'toned');
    const [grey] = findingsByPicture([{ ...toned, intentStated: true }], toNeutral).get('a.png')!;
    assert.equal('meant' in grey, false);
    const [plain] = findingsByPicture([picture('a.png', tint, { encoding: 'black-only' })], toNeutral).get(
      'a.png',
    )!;
    assert.equal('meant' in plain, false);
  });

  it('know where left-over colour may be meant, as a tone or as colour', () => {
    const meant = (encoding: 'rgb-residual' | 'colour', more = {}) =>
      findingsByPicture([{ ...picture('a.png', found, { encoding }), ...more }], toNeutral)
        .get('a.png')!
        .map(finding => finding.meant);
    assert.deepEqual(meant('rgb-residual'), ['toned', undefined]);
    assert.deepEqual(meant('colour'), ['colour', undefined]);
    assert.deepEqual(meant('colour', { intentStated: true }), [undefined, undefined]);
  });

  it('know what to convert to where that is the answer, and only there', () => {
    const pictures = [picture('a.png', found, { encoding: 'rgb-residual' }), picture('b.png')];
    const byPath = findingsByPicture(pictures, toNeutral);
    assert.deepEqual([...byPath.keys()], ['a.png']);
    assert.deepEqual(
      byPath.get('a.png')!.map(({ rule, fix }) => [rule, fix]),
      [
        ['residual-chroma', 'rgb-neutral'],
        ['untagged', null],
      ],
    );
  });

  it('know which file the result will be where layouts are to place it', () => {
    const as = (facts: Parameters<typeof picture>[2], to: RemedyEncoding) =>
      findingsByPicture([picture('a', found, facts)], () => to).get('a')![0].fixAs;
    const residual = { encoding: 'rgb-residual' as const };
    assert.equal(as({ ...residual, format: 'png' }, 'rgb-neutral'), null);
    assert.equal(as({ ...residual, format: 'tiff' }, 'rgb-neutral'), 'PNG');
    assert.equal(as({ ...residual, format: 'webp' }, 'rgb-neutral'), 'PNG');
    assert.equal(as({ ...residual, format: 'png' }, 'black-only'), 'TIFF');
    assert.equal(as({ ...residual, format: 'jpeg' }, 'rgb-neutral'), 'PNG or JPEG');
    assert.equal(as({ format: 'jpeg', encoding: 'four-channel' }, 'rgb-neutral'), 'PNG');
  });

  it('offer nothing that a picture is already, and nothing for what is left as it is', () => {
    const fixes = (one: ReturnType<typeof picture>) =>
      findingsByPicture([one], toNeutral)
        .get('a.png')!
        .map(({ fix }) => fix);
    assert.deepEqual(fixes(picture('a.png', found, { encoding: 'rgb-neutral' })), [null, null]);
    const replaced = { ...picture('a.png', found, { encoding: 'rgb-residual' }), replacedBy: 'b.png' };
    assert.deepEqual(fixes(replaced), [null, null]);
  });

  describe('about a format that a layout cannot place', () => {
    const refused = finding('format-not-placed', 'note', 'Browsers show no TIFF.');
    const fixes = (facts: Parameters<typeof picture>[2], findings = [refused], more = {}, to = toNeutral) =>
      findingsByPicture([{ ...picture('a.tif', findings, { format: 'tiff', ...facts }), ...more }], to)
        .get('a.tif')!
        .map(({ fix, fixAs, formatAlone }) => [fix, fixAs, ...(formatAlone ? ['format alone'] : [])].join());

    it('have it written in another that holds what is right as it is', () => {
      assert.deepEqual(fixes({ encoding: 'single-channel' }), ['single-channel,PNG,format alone']);
      assert.deepEqual(fixes({ encoding: 'rgb-neutral', format: 'webp' }), ['rgb-neutral,PNG,format alone']);
      const toned = picture('a.tif', [refused], { encoding: 'rgb-toned', format: 'tiff' });
      const [found] = findingsByPicture([toned], toNeutral).get('a.tif')!;
      assert.deepEqual([found.fix, found.meant], ['rgb-toned', undefined]);
    });

    it('go with what else asks for it to be converted, and with what it should be stored as', () => {
      const both = [refused, found[0]];
      assert.deepEqual(fixes({ encoding: 'rgb-residual' }, both), ['rgb-neutral,PNG', 'rgb-neutral,PNG']);
      assert.deepEqual(fixes({ encoding: 'black-only' }), ['rgb-neutral,PNG']);
      assert.deepEqual(fixes({ encoding: 'rgb-residual' }), ['rgb-neutral,PNG']);
    });

    it('offer nothing for colour, for what no such format holds, and where the name alone is wrong', () => {
      assert.deepEqual(fixes({ encoding: 'colour' }), [',']);
      assert.deepEqual(fixes({ encoding: 'rgb-neutral' }, [refused], { intent: 'colour' }), [',']);
      assert.deepEqual(fixes({ encoding: 'rgb-neutral', format: 'png' }), [',']);
      const inks = findingsByPicture(
        [picture('a.tif', [refused], { encoding: 'black-only', format: 'tiff' })],
        () => 'black-only',
      );
      assert.equal(inks.get('a.tif')![0].fix, null);
    });
  });

  it('know the name that a misnamed picture should have', () => {
    const named = { ...finding('wrong-extension', 'note', ''), data: { extension: 'jpg', right: 'png' } };
    const of = (path: string, ...findings: (typeof named)[]) =>
      findingsByPicture([picture(path, findings)], toNeutral).get(path)?.[0].rename;
    assert.equal(of('p.jpg/a.b.JPG', named), 'p.jpg/a.b.png');
    assert.equal(of('a.jpg', { ...named, data: {} as typeof named.data }), undefined);
  });

  it('tell the page in a file of several, of which nothing is converted', () => {
    const page = (n: number) => picture('a.tif', found.slice(0, 1), { encoding: 'rgb-residual', page: n });
    const findings = findingsByPicture([page(1), page(2)], toNeutral).get('a.tif')!;
    assert.deepEqual(
      findings.map(({ message, fix }) => [message, fix]),
      [
        ['A stain.', null],
        ['Page 2: A stain.', null],
      ],
    );
  });
});

describe('the pictures of a book in short', () => {
  it('say what each asks for and by which rules, those of the book too', () => {
    const mixed = {
      ...finding('mixed-encodings', 'warning', 'They differ.'),
      data: { convert: ['b.png'], pictures: ['a.png', 'b.png'] },
    };
    const pictures = [picture('a.png', found, { encoding: 'rgb-residual' }), picture('b.png')];
    assert.deepEqual(entriesOf(report(pictures, { findings: [mixed] })), [
      {
        ...{ path: 'a.png', page: 1, encoding: 'rgb-residual', doing: 'fix' },
        rules: ['residual-chroma', 'untagged'],
      },
      { path: 'b.png', page: 1, encoding: 'rgb-neutral', doing: 'fix', rules: ['mixed-encodings'] },
    ]);
  });
});
