import assert from 'node:assert/strict';
import { type Shipped, thirdPartyNotices } from '../../scripts/package/notices';
import type { Package } from '../../scripts/package/packages';

const part = (name: string, licence: string, more: Partial<Package> = {}): Package => ({
  name,
  version: '1.2.3',
  licence,
  texts: [`terms of ${name}`],
  inside: '',
  ...more,
});
const notices = (shipped: Partial<Shipped>) =>
  thirdPartyNotices({
    title: 'Something',
    bundled: [],
    separate: [],
    data: [],
    lesserTexts: ['THE LESSER LICENCE'],
    ...shipped,
  });

describe('third-party notices', () => {
  it('list every package with version, licence and terms', () => {
    const text = notices({ bundled: [part('inner', 'MIT')], separate: [part('@outer/one', 'Apache-2.0')] });
    for (const line of [
      'inner 1.2.3 - MIT',
      '@outer/one 1.2.3 - Apache-2.0',
      'terms of inner',
      'terms of @outer/one',
    ])
      assert.ok(text.includes(line), line);
    assert.ok(!text.includes('LESSER'));
  });

  it('tell of a library under the lesser licence what is in it, and give the licence', () => {
    const text = notices({
      separate: [part('decoder', 'LGPL-3.0-or-later', { texts: [], inside: '| vips |' })],
    });
    assert.match(text, /decoder 1\.2\.3\.\n.*put in its place.*\| vips \|.*THE LESSER LICENCE/s);
  });

  it('hand on the notices of data', () => {
    assert.match(
      notices({ data: [{ folder: 'print/data', text: 'measured by others' }] }),
      /print\/data\n\nmeasured/,
    );
  });

  for (const licence of ['GPL-3.0-only', 'AGPL-3.0-or-later', 'MIT OR GPL-2.0', 'UNLICENSED', 'undefined'])
    it(`are refused to a package under ${licence}`, () => {
      assert.throws(() => notices({ separate: [part('odd', licence)] }), /odd may not be shipped/);
    });

  it('are refused to a library under the lesser licence that became part of a program', () => {
    assert.throws(() => notices({ bundled: [part('decoder', 'LGPL-3.0-or-later')] }), /decoder may not/);
  });

  it('are refused to a package without its terms', () => {
    assert.throws(() => notices({ bundled: [part('bare', 'MIT', { texts: [] })] }), /bare comes without/);
  });
});
