import assert from 'node:assert/strict';
import { movedTogether } from '../../../src/report/compare/moved';
import { finding, picture } from '../text/support';
import { change, findings, page } from './support';

const renamed = (from: string, path: string, news = findings()) =>
  change('renamed', path, [page(picture(from), picture(path), { findings: news })], { from });
const names = ['1.jpg', '2.jpg', '3.jpg'];

describe('pictures that moved together', () => {
  it('are told in one line, by the folders that are called otherwise', () => {
    const deep = names.map(name => renamed(`kiste-6/a/${name}`, `kiste-7/a/${name}`));
    const flat = names.map(name => renamed(`kiste-6/${name}`, `kiste-7/${name}`));
    const { lines, others } = movedTogether([
      ...deep,
      ...flat,
      ...names.map(name => renamed(name, `in/${name}`)),
    ]);
    assert.deepEqual(lines, [
      '6 pictures moved from kiste-6/ to kiste-7/',
      "3 pictures moved from the book's folder to in/",
    ]);
    assert.deepEqual(others, []);
  });

  it('leave out what more is to be told of: other names, other contents, findings, another spread, a few', () => {
    const moved = names.map(name => renamed(`a/${name}`, `b/${name}`));
    const news = findings({ new: [finding('x', 'warning', '')] });
    const rest = [
      renamed('a/4.jpg', 'b/5.jpg'),
      { ...renamed('a/6.jpg', 'b/6.jpg'), kind: 'moved' as const },
      renamed('a/7.jpg', 'b/7.jpg', news),
      { ...renamed('a/8.jpg', 'b/8.jpg'), swapped: true },
      { ...renamed('a/9.jpg', 'b/9.jpg'), faced: ['b/1.jpg'] },
    ];
    const { lines, others } = movedTogether([...rest, ...moved]);
    assert.deepEqual(lines, ['3 pictures moved from a/ to b/']);
    assert.deepEqual(others, rest);
    assert.deepEqual(movedTogether(moved.slice(1)), { lines: [], others: moved.slice(1) });
  });
});
